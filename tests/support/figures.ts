import * as arrangement from '@pourproof/arrangement';
import * as cutting from '@pourproof/cutting';
import * as geometry from '@pourproof/geometry';
import * as plane from '@pourproof/plane';

/** A region with all that is asked of it; sizes are mm and grow with the region, machines too. */
export interface Measured {
  readonly region: plane.CleanRegion;
  readonly axis: geometry.MedialAxis;
  /** A second shape that is placed and moved with the region. */
  readonly other: plane.CleanRegion;
  readonly radiusMm: number;
  readonly depthMm: number;
  readonly toleranceMm: number;
  readonly grainRad: number;
  /** How many times as large as it was drawn. */
  readonly scale: number;
}

type Values = number | readonly Values[];

/**
 * Figures without place and order by the power of the length in them: 0 for numbers and minutes, 1 for mm and so on. `near` holds figures that
 * are known within a bound, each `[value, bound]`, both in that power.
 */
export interface Figures {
  readonly power0?: Values;
  readonly power1?: Values;
  readonly power2?: Values;
  readonly power3?: Values;
  readonly near?: Readonly<Partial<Record<0 | 1 | 2 | 3, readonly (readonly [number, number])[]>>>;
}

type Measure = (of: Measured) => Figures;

/** What each export that measures a region says of it. */
export const FIGURES: Readonly<Record<string, Readonly<Record<string, Measure>>>> = {
  plane: {
    perimeter: ({ region }) => ({ power1: plane.perimeter(region) }),
    ringArea: ({ region }) => ({ power2: sorted(ringAreas(region)) }),
    signedArea: ({ region }) => ({ power2: plane.signedArea(region) }),
  },
  arrangement: {
    booleans: ({ region, other }) => ({
      power2: (['union', 'intersect', 'subtract', 'xor'] as const).map((operation) =>
        plane.signedArea(arrangement.booleans(region, other, operation)),
      ),
    }),
    combineShapes: ({ region, other }) => ({
      power2: plane.signedArea(arrangement.combineShapes([filled(region)], [filled(other)], 'xor')),
    }),
    resolveRegions: ({ region, other }) => {
      const resolved = arrangement.resolveRegions([filled(region), filled(other)]);
      return { power2: plane.signedArea(resolved.region) };
    },
    cleanRegionFrom: ({ region }) => {
      const edges = new Uint32Array(region.coords.length / 2);
      const arranged = arrangement.arrange(region, edges, () => () => undefined);
      const sides = arrangement.labelSides(arranged, {
        shapeOfEdge: edges,
        fillRules: ['nonzero'],
        groupOfShape: new Uint8Array(1),
        keeps: [false, true, true, true],
      });
      return { power2: plane.signedArea(arrangement.cleanRegionFrom(arranged, sides).region) };
    },
    holeCount: ({ region }) => ({ power0: arrangement.holeCount(region) }),
    outerRingCount: ({ region }) => ({ power0: arrangement.outerRingCount(region) }),
    sweptAcross: ({ region }) => ({ power2: plane.signedArea(arrangement.sweptAcross(region)) }),
  },
  geometry: {
    AxisEdge: ({ axis }) => {
      const edge = new geometry.AxisEdge(axis);
      return {
        power2: Array.from(axis.edgeFrom, (_, e) => {
          edge.load(e);
          return edge.isSecondary(e) ? 0 : edge.area(edge.r0, edge.r1, 0);
        }).reduce(add, 0),
      };
    },
    enteringRadius: ({ axis, radiusMm }) => ({ power1: geometry.enteringRadius(axis, radiusMm) }),
    erodedArea: ({ axis, radiusMm }) => ({ power2: geometry.erodedArea(axis, radiusMm) }),
    endGrainLength: ({ region, grainRad }) => ({ power1: geometry.endGrainLength(region, grainRad) }),
    narrowStretches: ({ axis, radiusMm }) => {
      const all = geometry.narrowStretches(axis, 2 * radiusMm);
      return {
        power1: sorted(all.map(({ lengthMm }) => lengthMm)),
        power0: all.filter(({ kind }) => kind === 'taper').length,
      };
    },
    openedArea: ({ axis, radiusMm }) => ({ power2: geometry.openedArea(axis, radiusMm) }),
    reachedArea: ({ axis, radiusMm }) => ({
      power2: shares((s) => geometry.reachedArea(axis, radiusMm, s * radiusMm)),
    }),
    separateParts: ({ axis }) => ({
      power1: sorted(geometry.separateParts(axis).map(({ widthMm }) => widthMm)),
    }),
    stoppingClearance: ({ axis, radiusMm }) => ({ power1: geometry.stoppingClearance(axis, radiusMm) }),
    strokeLines: ({ axis }) => ({
      power1: geometry.strokeLines(axis).reduce((most, { widths }) => Math.max(most, ...widths), 0),
    }),
    strokeWidths: ({ axis, radiusMm }) => {
      const { narrowestMm, lengthMm, lengthNarrowerThan, tapers } = geometry.strokeWidths(axis);
      return {
        power1: [narrowestMm ?? -1, lengthMm, lengthNarrowerThan(2 * radiusMm), tapers?.lengthMm ?? 0],
      };
    },
    vVolume: ({ axis, depthMm }) => ({
      power3: [depthMm, Infinity].map((deep) => geometry.vVolume(axis, { includedRad: 1, depthMm: deep })),
    }),
    wallRuns: ({ region, grainRad, radiusMm }) => {
      const runs = geometry.wallRuns(region, grainRad, {
        minExposure: 0.5,
        joinGapMm: radiusMm,
        minLengthMm: 0,
      });
      return { power1: sorted(runs.map(({ exposedMm }) => exposedMm)) };
    },
    medialAxis: ({ axis }) => ({ power1: axis.nodeR.reduce((a, b) => Math.max(a, b), 0) }),
    arcRingsArea: ({ axis, radiusMm: r }) => ({
      power2: shares((s) => geometry.arcRingsArea(cutting.reachedOutline(axis, r, s * r))),
    }),
    arcRingsLength: ({ axis, radiusMm: r }) => ({
      power1: shares((s) => geometry.arcRingsLength(cutting.reachedOutline(axis, r, s * r))),
    }),
    polygonFromArcs: ({ axis, radiusMm: r, toleranceMm }) => {
      const arcs = cutting.reachedOutline(axis, r, r);
      const area = plane.signedArea(geometry.polygonFromArcs(arcs, toleranceMm));
      return { near: { 2: [[area, toleranceMm * geometry.arcRingsLength(arcs)]] } };
    },
    leftStanding: ({ axis, radiusMm, toleranceMm }) => {
      const { pieces, facetAreaMm2 } = geometry.leftStanding(axis, radiusMm, toleranceMm);
      return {
        power0: pieces.length,
        power1: sorted(pieces.map(({ shortMm }) => shortMm ?? 0)),
        power2: [sorted(pieces.map(({ areaMm2 }) => areaMm2)), facetAreaMm2],
      };
    },
    findLevelCrossings: ({ axis, radiusMm }) => {
      const { sweep } = geometry.findLevelCrossings(axis, radiusMm);
      return { power0: sweep.reduce(add, 0) };
    },
    openArcs: ({ axis, radiusMm }) => {
      const { from, to } = geometry.openArcs(geometry.findLevelCrossings(axis, radiusMm));
      return { power0: from.reduce((sum, at, k) => sum + to[k] - at, 0) };
    },
    sectorArea: ({ axis, radiusMm }) => {
      const crossings = geometry.findLevelCrossings(axis, radiusMm);
      return { power2: geometry.sectorArea(crossings, geometry.openArcs(crossings)) };
    },
    outsideOf: ({ region, radiusMm }) => ({
      power2: plane.signedArea(geometry.outsideOf(region, 2 * radiusMm)) - box(region, radiusMm),
    }),
    sweepAlong: ({ region, grainRad, depthMm }) => ({
      power2: geometry.sweepAlong(region, grainRad, depthMm).areaMm2,
    }),
    sweptArea: ({ region, grainRad, depthMm }) => ({
      power2: geometry.sweptArea(geometry.woodAlong(region, grainRad), depthMm),
    }),
    touchesWithin: ({ region, grainRad, depthMm }) => ({
      power1: sorted(
        geometry.touchesWithin(geometry.woodAlong(region, grainRad), depthMm).map(({ gapMm }) => gapMm),
      ),
    }),
    sweepTouches: ({ region, grainRad, depthMm }) => ({
      power1: sorted(geometry.sweepTouches(region, grainRad, depthMm).map(({ gapMm }) => gapMm)),
    }),
  },
  cutting: {
    reachedOutline: ({ axis, radiusMm: r }) => ({
      power1: shares((s) => geometry.arcRingsLength(cutting.reachedOutline(axis, r, s * r))),
      power2: shares((s) => geometry.arcRingsArea(cutting.reachedOutline(axis, r, s * r))),
    }),
    carve: (of) => {
      const cuts = carvings(of);
      return {
        power1: cuts.map(({ maxDepthMm, perCutter }) => [
          maxDepthMm,
          perCutter.map(({ lengthMm }) => lengthMm),
        ]),
        power2: cuts.map(({ areaMm2, floorAreaMm2 }) => [areaMm2, floorAreaMm2]),
        near: {
          2: cuts.map(({ wallAreaMm2, wallAreaErrorMm2 }) => [wallAreaMm2, wallAreaErrorMm2]),
          3: cuts.map(({ volumeMm3, volumeErrorMm3 }) => [volumeMm3, volumeErrorMm3]),
        },
      };
    },
    carvedWalls: (of) => {
      const all = carvings(of).map((cut) => cutting.carvedWalls(cut, { grainRad: of.grainRad }));
      return { power2: all.map(({ areaMm2, exposedMm2 }) => [areaMm2, exposedMm2]) };
    },
    clearingPath: (of) => {
      const [whole, rest] = clearings(of).map((path) => timeOf(of, path).cutMm);
      // where loops are cut off is found by steps
      return { power1: whole, near: { 1: [[rest, 0.01 * rest]] } };
    },
    followingPath: (of) => {
      const all = followings(of);
      return { power1: all.map(({ lengthMm, retracedMm }) => lengthMm - retracedMm) };
    },
    inPasses: (of) => {
      const depths = cutting.equalPasses(of.depthMm, of.depthMm / 3);
      return {
        near: {
          1: followings(of).map(({ path, lengthMm, retracedMm }) => [
            timeOf(of, cutting.inPasses(path, depths)).cutMm,
            depths.length * (retracedMm + CHORDS_SHARE * lengthMm),
          ]),
        },
      };
    },
    cuttingTime: (of) => ({
      near: { 0: clearings(of).map((path) => [timeOf(of, path).cutMinutes, startMinutes(path)]) },
    }),
    cutterEfforts: (of) => {
      const { axis, radiusMm: r, depthMm } = of;
      const [cleared, followed] = cutting.cutterEfforts(
        { clear: axis, follow: axis },
        [
          { way: 'clear', widthMm: 2 * r, depthMm },
          { way: 'follow', includedRad: 1, diameterMm: 20 * r, depthMm },
        ],
        machineOf(of),
      );
      return {
        power0: [cleared.passes, followed.passes],
        power1: cleared.pathMm,
        near: { 1: [[followed.pathMm, RETRACED_SHARE * followed.pathMm]] },
      };
    },
  },
};

/** Exports whose figures do not grow with the artwork, and why. */
export const OWN_LENGTHS: Readonly<Record<string, string>> = {
  cuttingTime: 'what is finer than the flattening of artwork in mm counts as straight',
  cutterEfforts: 'what is too short to see, and what a retract is worth, are lengths in mm',
};

/** Exports that take a region and of which no figure is asked here, and why. */
export const NO_FIGURE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  plane: {
    boundsOf: 'a box along the axes turns into another',
    ringsBounds: 'a box along the axes turns into another',
    ringCoords: 'the points themselves',
    ringStart: 'an index',
    packRings: 'the points themselves',
    transformRings: 'what moves',
  },
  arrangement: {
    arrange: 'by cleanRegionFrom',
    labelSides: 'by cleanRegionFrom',
  },
  geometry: {
    axisChords: 'chords of parabolas, of which subdividing makes more: turning-changes-no-area',
    woodAlong: 'by sweptArea and touchesWithin',
    sweepAt: 'an angle at a place',
    curvedEdges: 'what is a chord hangs on the points: within-flattening',
    withinFlattening: 'what is a chord hangs on the points: within-flattening',
    hardlyNarrower: 'what is a chord hangs on the points: within-flattening',
  },
  cutting: {},
};

/** What may be walked twice of a way along strokes, to save retracts, as a share of it: which parts are is a choice among many. */
const RETRACED_SHARE = 0.2;

/** What chords that begin elsewhere change of the length of a path, as a share of it. */
const CHORDS_SHARE = 0.05;

/** What a run may gain by beginning on a straight move and not in an arc or corner: it speeds up and stops once, minutes. */
function startMinutes({ runEnds }: cutting.CutterPath): number {
  const { feedMmPerMin, accelerationMmPerS2 } = cutting.SMALL_ROUTER;
  return (runEnds.length * 2 * (feedMmPerMin / 60)) / accelerationMmPerS2 / 60;
}

function add(a: number, b: number): number {
  return a + b;
}

function sorted(values: readonly number[]): readonly number[] {
  return values.toSorted((a, b) => a - b);
}

function shares<T>(of: (share: number) => T): T[] {
  return [0, 0.3, 1].map(of);
}

function ringAreas(region: plane.CleanRegion): readonly number[] {
  return Array.from(region.ringEnds, (_, k) => plane.ringArea(plane.ringCoords(region, k)));
}

function filled(region: plane.Rings): plane.Region {
  return { coords: region.coords, ringEnds: region.ringEnds, fillRule: 'nonzero' };
}

/** Area of the box that `outsideOf` fills up, which hangs on how the region lies. */
function box(region: plane.CleanRegion, radiusMm: number): number {
  const [left, top, right, bottom] = plane.ringsBounds(region);
  return (right - left + 4 * radiusMm) * (bottom - top + 4 * radiusMm);
}

/** A machine that grows with the artwork, so that what it takes stays the same. */
function machineOf({ scale }: Measured): Partial<cutting.Machine> {
  return Object.fromEntries(Object.entries(cutting.SMALL_ROUTER).map(([key, value]) => [key, value * scale]));
}

function timeOf(of: Measured, path: cutting.CutterPath): cutting.CuttingTime {
  return cutting.cuttingTime(path, machineOf(of));
}

function carvings({ axis, radiusMm: r, depthMm, toleranceMm }: Measured): readonly cutting.Carving[] {
  const steps: readonly (readonly cutting.CarveStep[])[] = [
    [{ cutter: cutting.flatCutter(2 * r), way: 'clear' }],
    [{ cutter: cutting.ballCutter(2 * r), way: 'clear' }],
    [{ cutter: cutting.veeCutter({ includedRad: 1, diameterMm: 20 * r }), way: 'follow' }],
  ];
  return steps.map((each) => cutting.carve(axis, each, { depthMm, toleranceMm }));
}

function clearings({ axis, radiusMm: r, depthMm, scale }: Measured): readonly cutting.CutterPath[] {
  const common = {
    diameterMm: 2 * r,
    stepoverMm: 0.8 * r,
    depthMm,
    ignoreMm: 0.02 * scale,
    overlapMm: 0.1 * scale,
  };
  return [
    cutting.clearingPath(axis, common),
    cutting.clearingPath(axis, { ...common, earlierDiameterMm: 3 * r, stayDownMm: 0 }),
  ];
}

function followings({
  axis,
  radiusMm,
  depthMm,
  scale,
  toleranceMm,
}: Measured): readonly cutting.FollowingPath[] {
  const common = { includedRad: 1, toleranceMm, ignoreMm: 0.02 * scale, retraceMm: 40 * scale };
  return [
    cutting.followingPath(axis, { ...common, depthMm }),
    cutting.followingPath(axis, { ...common, depthMm: Infinity }),
    cutting.followingPath(axis, { ...common, depthMm, tipFlatMm: radiusMm }),
  ];
}
