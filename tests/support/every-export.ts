import * as arrangement from '@pourproof/arrangement';
import * as cutting from '@pourproof/cutting';
import * as geometry from '@pourproof/geometry';
import * as plane from '@pourproof/plane';

/** A clean region to be measured, with sizes that suit it. */
export interface Walked {
  readonly region: plane.CleanRegion;
  readonly axis: geometry.MedialAxis;
  /** Half of a bit's width, mm: anything from much less than the strokes to more than fits. */
  readonly radiusMm: number;
  /** The same for paths, which go round once for each stepover: not much less than the strokes. */
  readonly pathRadiusMm: number;
  /** Other sizes are shares of these, mm. */
  readonly depthMm: number;
  readonly toleranceMm: number;
  readonly turnRad: number;
}

type Walk = (of: Walked) => unknown;

/** How each export that takes a region, or what is made of one, is called on a clean region. */
export const WALKS: Readonly<Record<string, Readonly<Record<string, Walk>>>> = {
  plane: {
    boundsOf: ({ region }) => plane.boundsOf(region.coords),
    perimeter: ({ region }) => plane.perimeter(region),
    ringArea: ({ region }) => rings(region, (k) => plane.ringArea(plane.ringCoords(region, k))),
    ringCoords: ({ region }) => rings(region, (k) => plane.ringCoords(region, k)),
    ringsBounds: ({ region }) => plane.ringsBounds(region),
    ringStart: ({ region }) => rings(region, (k) => plane.ringStart(region, k)),
    packRings: ({ region }) => plane.packRings(rings(region, (k) => plane.ringCoords(region, k))),
    signedArea: ({ region }) => plane.signedArea(region),
    transformRings: ({ region, turnRad }) => plane.transformRings(plane.rotation(turnRad), region),
  },
  arrangement: {
    booleans: ({ region, turnRad }) => {
      const other = arrangement.resolveRegions([
        filled(plane.transformRings(plane.rotation(turnRad), region)),
      ]).region;
      return (['union', 'intersect', 'subtract', 'xor'] as const).map((operation) =>
        arrangement.booleans(region, other, operation),
      );
    },
    combineShapes: ({ region, turnRad }) =>
      arrangement.combineShapes(
        [filled(region)],
        [filled(plane.transformRings(plane.rotation(turnRad), region))],
        'xor',
      ),
    resolveRegions: ({ region }) => arrangement.resolveRegions([filled(region), filled(region)]),
    arrange: ({ region }) => arrangedOf(region).arrangement,
    labelSides: ({ region }) => sidesOf(region),
    cleanRegionFrom: ({ region }) =>
      arrangement.cleanRegionFrom(arrangedOf(region).arrangement, sidesOf(region)),
    holeCount: ({ region }) => arrangement.holeCount(region),
    outerRingCount: ({ region }) => arrangement.outerRingCount(region),
    sweptAcross: ({ region }) => arrangement.sweptAcross(region),
  },
  geometry: {
    axisChords: ({ axis }) => geometry.axisChords(axis),
    AxisEdge: ({ axis }) => {
      const edge = new geometry.AxisEdge(axis);
      return Array.from(axis.edgeFrom, (_, e) => {
        edge.load(e);
        return edge.isSecondary(e) ? 0 : edge.lengthBetween(0, 1) + edge.area(edge.r0, edge.r1, 0);
      });
    },
    enteringRadius: ({ axis, radiusMm }) => geometry.enteringRadius(axis, radiusMm),
    erodedArea: ({ axis, radiusMm }) => geometry.erodedArea(axis, radiusMm),
    endGrainLength: ({ region, turnRad }) => geometry.endGrainLength(region, turnRad),
    hardlyNarrower: ({ axis, radiusMm, toleranceMm }) => geometry.hardlyNarrower(axis, radiusMm, toleranceMm),
    narrowStretches: ({ axis, radiusMm }) => geometry.narrowStretches(axis, 2 * radiusMm),
    openedArea: ({ axis, radiusMm }) => geometry.openedArea(axis, radiusMm),
    reachedArea: ({ axis, radiusMm }) => shares((s) => geometry.reachedArea(axis, radiusMm, s * radiusMm)),
    separateParts: ({ axis }) => geometry.separateParts(axis),
    stoppingClearance: ({ axis, radiusMm }) => geometry.stoppingClearance(axis, radiusMm),
    strokeLines: ({ axis }) => geometry.strokeLines(axis),
    strokeWidths: ({ axis, radiusMm }) => {
      const widths = geometry.strokeWidths(axis);
      return [widths, widths.lengthNarrowerThan(radiusMm), widths.histogram([0, radiusMm, 3 * radiusMm])];
    },
    vVolume: ({ axis, depthMm }) => [
      geometry.vVolume(axis, { includedRad: 1, depthMm }),
      geometry.vVolume(axis, { includedRad: 1, depthMm: Infinity }),
    ],
    wallRuns: ({ region, turnRad, radiusMm }) =>
      geometry.wallRuns(region, turnRad, { minExposure: 0.5, joinGapMm: radiusMm, minLengthMm: 0 }),
    medialAxis: ({ region }) => geometry.medialAxis(region),
    arcRingsArea: ({ axis, radiusMm }) => geometry.arcRingsArea(cutOutline(axis, radiusMm)),
    arcRingsLength: ({ axis, radiusMm }) => geometry.arcRingsLength(cutOutline(axis, radiusMm)),
    polygonFromArcs: ({ axis, radiusMm, toleranceMm }) =>
      geometry.polygonFromArcs(cutOutline(axis, radiusMm), toleranceMm),
    curvedEdges: ({ region, toleranceMm }) => geometry.curvedEdges(region, toleranceMm),
    leftStanding: ({ axis, radiusMm, toleranceMm }) => geometry.leftStanding(axis, radiusMm, toleranceMm),
    findLevelCrossings: ({ axis, radiusMm }) => geometry.findLevelCrossings(axis, radiusMm),
    openArcs: ({ axis, radiusMm }) => geometry.openArcs(geometry.findLevelCrossings(axis, radiusMm)),
    sectorArea: ({ axis, radiusMm }) => {
      const crossings = geometry.findLevelCrossings(axis, radiusMm);
      return geometry.sectorArea(crossings, geometry.openArcs(crossings));
    },
    sweepAt: ({ axis }) => {
      const edge = new geometry.AxisEdge(axis);
      return Array.from(axis.edgeFrom, (_, e) => {
        edge.load(e);
        edge.atShare(0.5);
        return edge.isSecondary(e) ? 0 : geometry.sweepAt(axis.boundary, edge);
      });
    },
    outsideOf: ({ region, radiusMm }) => geometry.medialAxis(geometry.outsideOf(region, 2 * radiusMm)),
    withinFlattening: ({ region, toleranceMm }) => {
      const { least, most } = geometry.withinFlattening(region, toleranceMm);
      return [geometry.medialAxis(least), geometry.medialAxis(most)];
    },
    sweepAlong: ({ region, turnRad, depthMm }) => geometry.sweepAlong(region, turnRad, depthMm),
    sweepTouches: ({ region, turnRad, depthMm }) => [
      geometry.sweepTouches(region, turnRad, depthMm),
      geometry.sweepTouches(region, turnRad, depthMm, region),
    ],
    woodAlong: ({ region, turnRad }) => geometry.woodAlong(region, turnRad),
    sweptArea: ({ region, turnRad, depthMm }) =>
      geometry.sweptArea(geometry.woodAlong(region, turnRad), depthMm),
    touchesWithin: ({ region, turnRad, depthMm }) =>
      geometry.touchesWithin(geometry.woodAlong(region, turnRad), depthMm),
  },
  cutting: {
    carve: (of) =>
      carvings(of).map((carving) => [
        carving,
        carving.contours([0, of.depthMm / 2, carving.maxDepthMm, of.depthMm]),
        carving.sliceArea(of.depthMm / 3),
        carving.sweptFloorOutline(),
        ...somePoints(of.region).map(([x, y]) => carving.depthAt(x, y)),
      ]),
    carvedWalls: (of) =>
      carvings(of).map((carving) =>
        cutting.carvedWalls(carving, {
          grainRad: of.turnRad,
          longestMm: plane.perimeter(of.region) / 40 + of.pathRadiusMm,
        }),
      ),
    clearingPath: ({ axis, pathRadiusMm: r, depthMm }) => [
      cutting.clearingPath(axis, { diameterMm: 2 * r, stepoverMm: r, depthMm }),
      cutting.clearingPath(axis, {
        diameterMm: 2 * r,
        stepoverMm: r,
        depthMm,
        earlierDiameterMm: 3 * r,
        deepestPassMm: depthMm / 2,
      }),
    ],
    followingPath: ({ axis, depthMm, radiusMm }) => [
      cutting.followingPath(axis, { includedRad: 1, depthMm }),
      cutting.followingPath(axis, { includedRad: 1, depthMm: Infinity }),
      cutting.followingPath(axis, { includedRad: 1, depthMm, tipFlatMm: radiusMm }),
      cutting.followingPath(axis, { includedRad: 1, depthMm, tipRadiusMm: radiusMm }),
    ],
    inPasses: ({ axis, depthMm }) =>
      cutting.inPasses(
        cutting.followingPath(axis, { includedRad: 1, depthMm }).path,
        cutting.equalPasses(depthMm, depthMm / 3),
      ),
    cuttingTime: ({ axis, depthMm }) =>
      cutting.cuttingTime(cutting.followingPath(axis, { includedRad: 1, depthMm }).path),
    reachedOutline: ({ axis, radiusMm }) =>
      shares((s) => cutting.reachedOutline(axis, radiusMm, s * radiusMm)),
    cutterEfforts: ({ axis, radiusMm, depthMm }) =>
      cutting.cutterEfforts({ clear: axis, follow: axis }, [
        { way: 'clear', widthMm: 4 * radiusMm, depthMm },
        { way: 'clear', widthMm: 2 * radiusMm, depthMm },
        { way: 'follow', includedRad: 1, diameterMm: 20, depthMm },
      ]),
  },
};

/** Exports that take no region, nor anything made of one. */
export const NO_REGION: Readonly<Record<string, readonly string[]>> = {
  plane: [
    ...['BoxIndex', 'COINCIDENT_REL_TOL', 'CSS_PX_PER_INCH', 'DEFAULT_FLATTEN_TOLERANCE_MM', 'EMPTY_BOUNDS'],
    ...['DEFAULT_JOIN_TOLERANCE_MM', 'G_PER_LB', 'G_PER_OZ', 'IDENTITY', 'InternalError', 'ML_PER_US_FL_OZ'],
    ...['MM_PER_INCH', 'MeasureError', 'NOTICE_CODES', 'PT_PER_INCH', 'PT_PER_PICA', 'RESOLVE_GRID_MM'],
    'SPECK_AREA_MM2',
    ...['CHORD_HEIGHT_SLACK', 'CORNER_TURN_RAD', 'SHORT_CHORD_TOLERANCES', 'STRAIGHT_TURN_RAD'],
    ...['TIE_GRAIN_MM', 'UnionFind', 'applyTransform', 'byGrain', 'compose', 'degrees', 'determinant'],
    ...['formatArea', 'formatLength', 'formatVolume', 'inGrains', 'inchesFromMm', 'invariant'],
    ...['aciColour', 'asking', 'poll', 'pollStep', 'trueColour'],
    ...['isEmptyBounds', 'joinBounds', 'keepUnits', 'mmFromInches', 'parseLengthMm', 'parseMeasure'],
    ...['radians', 'rotation', 'scaling', 'textInUnits', 'translation'],
  ],
  arrangement: ['CrossingsError', 'MAX_CROSSINGS', 'SweepStatus', 'turn'],
  geometry: ['angleBetween', 'checkRadius', 'fibreVector', 'packArcRings', 'parabolaArc', 'turnBesideVertex'],
  cutting: [
    ...['COMMON_SHARES', 'SMALL_ROUTER', 'ballCutter', 'bullNoseCutter', 'equalPasses', 'flankMoments'],
    ...['flatCutter', 'heightAt', 'heightMoments', 'profileCutter', 'radiusAt', 'taperedBallCutter'],
    ...['veeCutter'],
  ],
};

/** All that the packages of measuring give. */
export const EXPORTS: Readonly<Record<string, object>> = { plane, arrangement, geometry, cutting };

/** Every kind of cutter in sizes that suit a region, alone and together. */
function stepsOf({ radiusMm: r, depthMm }: Walked): readonly (readonly cutting.CarveStep[])[] {
  const clear = (cutter: cutting.Cutter): cutting.CarveStep => ({ cutter, way: 'clear' });
  const follow = (tip: object): cutting.CarveStep => ({
    cutter: cutting.veeCutter({ includedRad: 1, diameterMm: 20 * r, ...tip }),
    way: 'follow',
  });
  const flat = clear(cutting.flatCutter(2 * r));
  const ball = clear(cutting.ballCutter(2 * r));
  const alone = [
    flat,
    ball,
    clear(cutting.bullNoseCutter(2 * r, 0.4 * r)),
    clear(cutting.taperedBallCutter({ tipDiameterMm: r, sideRad: 0.1, diameterMm: 4 * r })),
    clear(
      cutting.profileCutter([
        [0, r / 3],
        [depthMm / 2, r / 3],
        [depthMm / 2, r / 2],
        [depthMm, r],
      ]),
    ),
    follow({}),
    follow({ tipFlatMm: r }),
    follow({ tipRadiusMm: r }),
  ];
  return [...alone.map((step) => [step]), [clear(cutting.flatCutter(4 * r)), ball], [follow({}), flat]];
}

function carvings(of: Walked): readonly cutting.Carving[] {
  return stepsOf(of).map((steps) => cutting.carve(of.axis, steps, { depthMm: of.depthMm }));
}

function cutOutline(axis: geometry.MedialAxis, radiusMm: number): geometry.ArcRings {
  return cutting.reachedOutline(axis, radiusMm, radiusMm);
}

function arrangedOf(region: plane.CleanRegion): {
  readonly arrangement: arrangement.Arrangement;
  readonly shapeOfEdge: Uint32Array;
} {
  const shapeOfEdge = new Uint32Array(region.coords.length / 2);
  return { arrangement: arrangement.arrange(region, shapeOfEdge, () => () => undefined), shapeOfEdge };
}

function sidesOf(region: plane.CleanRegion): Int8Array {
  const { arrangement: arranged, shapeOfEdge } = arrangedOf(region);
  return arrangement.labelSides(arranged, {
    shapeOfEdge,
    fillRules: ['nonzero'],
    groupOfShape: new Uint8Array(1),
    keeps: [false, true, true, true],
  });
}

function rings<T>({ ringEnds }: plane.Rings, of: (k: number) => T): T[] {
  return Array.from(ringEnds, (_, k) => of(k));
}

function shares<T>(of: (share: number) => T): T[] {
  return [0, 0.3, 1].map(of);
}

function somePoints(region: plane.CleanRegion): readonly plane.Point[] {
  const [left, top, right, bottom] = plane.ringsBounds(region);
  return [0.2, 0.5, 0.7].map((s) => [left + s * (right - left), top + (1 - s) * (bottom - top)]);
}

function filled(region: plane.Rings): plane.Region {
  return { coords: region.coords, ringEnds: region.ringEnds, fillRule: 'nonzero' };
}
