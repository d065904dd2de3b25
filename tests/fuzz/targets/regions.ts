import { booleans, resolveRegions } from '@pourproof/arrangement';
import {
  ballCutter,
  bullNoseCutter,
  type CarveStep,
  type Cutter,
  carve,
  carvedWalls,
  cutterEfforts,
  flatCutter,
  profileCutter,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import {
  endGrainLength,
  leftStanding,
  medialAxis,
  openedArea,
  separateParts,
  strokeLines,
  strokeWidths,
  sweepAlong,
  wallRuns,
} from '@pourproof/geometry';
import {
  type CleanRegion,
  joinBounds,
  perimeter,
  RESOLVE_GRID_MM,
  type Region,
  radians,
  ringsBounds,
  signedArea,
} from '@pourproof/plane';
import fc from 'fast-check';
import {
  anyPolygon,
  between,
  drawnShapes,
  flushRectangles,
  latticeNames,
  magnitude,
  nearlyEqualDrawings,
} from '../../arbitraries.ts';
import { cleanRegionFaults } from '../../support/oracles/clean-region-faults.ts';
import { checkNumbers, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';

const drawings: fc.Arbitrary<readonly Region[]> = fc.oneof(
  ...latticeNames.map((name) => drawnShapes(name)),
  flushRectangles,
  nearlyEqualDrawings.map((region) => [region]),
);

function expectClean(region: CleanRegion, what: string): void {
  if (region.coords.length > 600) {
    return;
  }
  const faults = cleanRegionFaults(region);
  if (faults.length > 0) {
    throw new Error(`${what} is no clean region: ${faults[0]}`);
  }
}

/** Drawings of lines as they come: what they resolve to is clean, and so are the booleans of two of them. */
export const drawnRegions: FuzzTarget = fuzzTarget(
  'drawn-regions',
  { limitMs: 2000, quick: 150 },
  fc.tuple(drawings, drawings),
  ([one, other]) => {
    const [a, b] = [resolveRegions(one).region, resolveRegions(other).region];
    expectClean(a, 'a resolved drawing');
    const [union, common, less, either] = OPERATIONS.map((operation) => {
      const region = booleans(a, b, operation);
      checkNumbers(region.coords, operation);
      expectClean(region, operation);
      return signedArea(region);
    });
    // points within half the grid count as one, coarser where one lies far from the other: every edge moves by less than that
    const [left, top, right, bottom] = joinBounds(ringsBounds(a), ringsBounds(b));
    const grid = Math.max(RESOLVE_GRID_MM, 2 ** -29 * Math.max(right - left, bottom - top));
    const slack = 20 * grid * (1 + perimeter(a) + perimeter(b));
    const off = [
      union + common - signedArea(a) - signedArea(b),
      less + common - signedArea(a),
      either + common - union,
    ];
    if (off.some((mm2) => Math.abs(mm2) > slack)) {
      throw new Error(`areas of the booleans are off by ${off.join(', ')} mm², more than ${slack}`);
    }
  },
);

const OPERATIONS = ['union', 'intersect', 'subtract', 'xor'] as const;

const shapes: fc.Arbitrary<CleanRegion> = fc.oneof(
  { weight: 3, arbitrary: anyPolygon },
  {
    weight: 1,
    arbitrary: drawings
      .map((all) => resolveRegions(all).region)
      .filter((region) => region.ringEnds.length > 0),
  },
);

const size = fc.oneof({ weight: 4, arbitrary: between(0.1, 6) }, { weight: 1, arbitrary: magnitude(-4, 3) });
const angle = fc.oneof(
  { weight: 4, arbitrary: between(radians(10), radians(150)) },
  { weight: 1, arbitrary: fc.constantFrom(1e-3, 3.14) },
);
const share = between(0.05, 0.95);

/** Every kind of cutter, of usual sizes and of absurd ones. */
const cutters: fc.Arbitrary<Cutter> = fc.oneof(
  size.map((d) => flatCutter(d)),
  size.map((d) => ballCutter(d)),
  fc.tuple(size, share).map(([d, part]) => bullNoseCutter(d, (part * d) / 2)),
  fc.tuple(size, angle).map(([d, includedRad]) => veeCutter({ includedRad, diameterMm: d })),
  fc
    .tuple(size, angle, share)
    .map(([d, includedRad, part]) => veeCutter({ includedRad, diameterMm: d, tipFlatMm: part * d })),
  fc
    .tuple(size, angle, share)
    .map(([d, includedRad, part]) => veeCutter({ includedRad, diameterMm: d, tipRadiusMm: (part * d) / 2 })),
  fc
    .tuple(size, between(radians(1), radians(40)), share)
    .map(([d, sideRad, part]) => taperedBallCutter({ tipDiameterMm: part * d, sideRad, diameterMm: d })),
  fc.tuple(size, share, size).map(([d, part, h]) =>
    profileCutter([
      [0, (part * d) / 2],
      [h, (part * d) / 2],
      [2 * h, d / 2],
    ]),
  ),
);

const step = fc.tuple(cutters, fc.boolean()).map(
  ([cutter, isFollowing]): CarveStep => ({
    cutter,
    way: isFollowing && cutter.shape === 'vee' ? 'follow' : 'clear',
  }),
);
/** Mostly one: cuts of several are joined slice by slice, which takes most of the time and says the same of each. */
const steps: fc.Arbitrary<CarveStep[]> = fc.oneof(
  { weight: 8, arbitrary: step.map((only) => [only]) },
  { weight: 1, arbitrary: fc.array(step, { minLength: 2, maxLength: 3 }) },
);

/** Points of a region that is carved, most of the time: what a cutter does at a corner or a waist shows at few, and ten times as many inputs are tried. */
const FEW_POINTS = 24;
const carvedShapes: fc.Arbitrary<CleanRegion> = fc.oneof(
  { weight: 19, arbitrary: shapes.filter(({ coords }) => coords.length <= 2 * FEW_POINTS) },
  { weight: 1, arbitrary: shapes },
);

/** Clean regions under every cutter: figures that are finite, and no more cut than there is. */
export const carvedRegions: FuzzTarget = fuzzTarget(
  'regions-with-cutters',
  { limitMs: 20_000, quick: 20 },
  fc.tuple(carvedShapes, steps, between(0.05, 8)),
  ([region, given, depthMm]) => {
    const axis = medialAxis(region);
    const cut = carve(axis, given, { depthMm });
    const {
      areaMm2,
      volumeMm3,
      volumeErrorMm3,
      floorAreaMm2,
      wallAreaMm2,
      scallopedFloorMm2,
      ledgeAreaMm2,
      maxDepthMm,
    } = cut;
    checkNumbers({
      areaMm2,
      volumeMm3,
      volumeErrorMm3,
      floorAreaMm2,
      wallAreaMm2,
      scallopedFloorMm2,
      ledgeAreaMm2,
      maxDepthMm,
    });
    checkNumbers(cut.perCutter, 'perCutter');
    const whole = signedArea(region);
    const slack = 1e-3 * perimeter(region) + 1e-9;
    if (
      !(areaMm2 >= -1e-9 && areaMm2 <= whole + slack && floorAreaMm2 <= areaMm2 + slack && volumeMm3 >= -1e-9)
    ) {
      throw new Error(`area ${areaMm2} of ${whole} mm², floor ${floorAreaMm2} mm², volume ${volumeMm3} mm³`);
    }
    if (
      volumeMm3 > areaMm2 * maxDepthMm + volumeErrorMm3 + slack * depthMm ||
      maxDepthMm > depthMm * (1 + 1e-12)
    ) {
      throw new Error(`volume ${volumeMm3} mm³ in ${areaMm2} mm² × ${maxDepthMm} mm, asked ${depthMm} mm`);
    }
    for (const depth of [0, depthMm / 2, depthMm]) {
      checkNumbers(cut.sliceArea(depth), 'slice');
      checkNumbers(cut.sliceOutline(depth), 'slice outline');
    }
    checkNumbers(carvedWalls(cut, { grainRad: 0.3 }), 'walls');
  },
);

/** Every public measure of a clean region: finite numbers. */
export const measuredRegions: FuzzTarget = fuzzTarget(
  'measured-regions',
  { limitMs: 10_000, quick: 15 },
  fc.tuple(shapes, size, between(0, 3)),
  ([region, width, grainRad]) => {
    const axis = medialAxis(region);
    const widths = strokeWidths(axis);
    checkNumbers(widths, 'stroke widths');
    checkNumbers(strokeLines(axis), 'stroke lines');
    checkNumbers(openedArea(axis, width / 2), 'opened area');
    checkNumbers(leftStanding(axis, width / 2, 0.005), 'left standing');
    checkNumbers(separateParts(axis), 'parts');
    checkNumbers(endGrainLength(region, grainRad), 'end grain');
    checkNumbers(wallRuns(region, grainRad, { minExposure: 0.7, joinGapMm: 1, minLengthMm: 1 }), 'runs');
    const band = sweepAlong(region, grainRad, width);
    checkNumbers(band, 'band');
    const efforts = cutterEfforts({ clear: axis, follow: axis }, [
      { way: 'clear', widthMm: Math.max(0.3, width), depthMm: 2 },
      { way: 'follow', diameterMm: 6, includedRad: 1, depthMm: 2 },
    ]);
    checkNumbers(efforts, 'efforts');
    if (widths.narrowestMm === null && region.ringEnds.length > 0) {
      throw new Error('a region that is not empty has no narrowest stroke');
    }
  },
);
