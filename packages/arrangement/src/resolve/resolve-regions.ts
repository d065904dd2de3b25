import {
  type CleanRegion,
  type Point,
  type Region,
  type Rings,
  ringArea,
  ringStart,
  SPECK_AREA_MM2,
} from '@pourproof/plane';
import { arrange } from './arrange.ts';
import { cleanRegionFrom } from './clean-region-from.ts';
import { type Crossing, CrossingLog } from './crossing-log.ts';
import { type DoubledRing, doubledRings } from './doubled-rings.ts';
import { joinedRings } from './joined-rings.ts';
import { labelSides } from './label-sides.ts';
import type { SegmentSet } from './segment-set.ts';
import type { CrossingSink } from './sweep-state.ts';

/** A part of the result below the speck limit; it stays in the region. */
export interface Speck {
  readonly areaMm2: number;
  readonly atMm: Point;
}

/** What {@link resolveRegions} makes of drawn shapes. */
export interface Resolved {
  readonly region: CleanRegion;
  /** The first crossings, by x; `crossingCount` has their number. */
  readonly crossings: readonly Crossing[];
  /** Number of places where drawn edges cross, counted per pair of shapes. */
  readonly crossingCount: number;
  /** Outlines drawn more than once. */
  readonly doubled: readonly DoubledRing[];
  /** What left no trace in the region. */
  readonly dropped: {
    /** Drawn rings that enclose nothing: a point, or a line there and back. */
    readonly zeroAreaRings: number;
    /** Rings of the result smaller than the tolerance squared. */
    readonly slivers: number;
  };
  readonly specks: readonly Speck[];
  /** Largest distance that a drawn point was moved onto another, mm; 0 when none was. */
  readonly largestMoveMm: number;
  /**
   * Points and edges nearer to each other than this counted as touching, mm: half of `RESOLVE_GRID_MM` unless
   * the size of the drawing forbids it.
   */
  readonly toleranceMm: number;
}

/** Choices of {@link resolveRegions}. */
export interface ResolveOptions {
  /** How many crossings are listed; all are counted. Default 1000. */
  readonly listedPlaces?: number;
}

/**
 * Resolves drawn shapes into one clean region, in mm: the union of what each shape paints by its own fill
 * rule.
 *
 * Rings may cross, overlap, touch and run either way, within a shape and between shapes. Drawn points keep
 * their coordinates to the bit unless another point lies within half of `RESOLVE_GRID_MM`; new points appear
 * only where edges cross. Inside and outside are decided by exact predicates. O((n + k) log n) for n points
 * and k crossings.
 *
 * @example
 * const bowTie = { ...packRings([[0, 0, 10, 10, 10, 0, 0, 10]]), fillRule: 'nonzero' };
 * const { region, crossings } = resolveRegions([bowTie]);
 * region.ringEnds.length; // 2
 * crossings[0].atMm.join(); // 5,5
 *
 * @returns the region, empty for no shapes, and what a maker should know about the drawing
 * @throws {RangeError} when a coordinate is not finite
 * @throws {CrossingsError} when more than `MAX_CROSSINGS` crossings are found
 */
export function resolveRegions(regions: readonly Region[], options: ResolveOptions = {}): Resolved {
  const { listedPlaces = 1000 } = options;
  const { rings, shapeOfEdge } = joinedRings(regions);
  let log: CrossingLog | undefined;
  const logged = (segments: SegmentSet): CrossingSink => {
    const fresh = new CrossingLog(rings, shapeOfEdge, segments);
    log = fresh;
    return (v, a, b) => fresh.add(v, a, b);
  };
  const arrangement = arrange(rings, shapeOfEdge, logged);
  const sides = labelSides(arrangement, {
    shapeOfEdge,
    fillRules: regions.map((region) => region.fillRule),
    groupOfShape: new Uint8Array(regions.length),
    keeps: [false, true, true, true],
  });
  const { region, slivers } = cleanRegionFrom(arrangement, sides);
  log?.addAtPoints(arrangement.vertexOfPoint);
  const crossings = log?.listed(listedPlaces) ?? [];
  return {
    region,
    crossings,
    crossingCount: log?.count ?? 0,
    doubled: doubledRings(rings, shapeOfEdge, arrangement.vertexOfPoint),
    dropped: { zeroAreaRings: zeroAreaRings(rings, arrangement.toleranceMm), slivers },
    specks: specksOf(region),
    largestMoveMm: arrangement.largestMoveMm,
    toleranceMm: arrangement.toleranceMm,
  };
}

function zeroAreaRings(rings: Rings, toleranceMm: number): number {
  const { coords } = rings;
  let count = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    const signed = ringArea(coords, from, to);
    if (Math.abs(signed) > toleranceMm * toleranceMm) {
      continue;
    }
    // a bow tie has a signed area of 0 and still encloses something; points on one line do not
    if (isOnOneLine(coords, from, to, toleranceMm)) {
      count++;
    }
  }
  return count;
}

function isOnOneLine(coords: Float64Array, from: number, to: number, toleranceMm: number): boolean {
  const x0 = coords[2 * from];
  const y0 = coords[2 * from + 1];
  let far = 0;
  let dx = 0;
  let dy = 0;
  for (let i = from; i < to; i++) {
    const length = Math.hypot(coords[2 * i] - x0, coords[2 * i + 1] - y0);
    if (length > far) {
      far = length;
      dx = (coords[2 * i] - x0) / length;
      dy = (coords[2 * i + 1] - y0) / length;
    }
  }
  for (let i = from; i < to; i++) {
    if (Math.abs((coords[2 * i] - x0) * dy - (coords[2 * i + 1] - y0) * dx) > toleranceMm) {
      return false;
    }
  }
  return true;
}

function specksOf(region: CleanRegion): readonly Speck[] {
  const specks: Speck[] = [];
  for (let k = 0; k < region.ringEnds.length; k++) {
    const areaMm2 = ringArea(region.coords, ringStart(region, k), region.ringEnds[k]);
    if (areaMm2 > 0 && areaMm2 < SPECK_AREA_MM2) {
      const at = 2 * ringStart(region, k);
      specks.push({ areaMm2, atMm: [region.coords[at], region.coords[at + 1]] });
    }
  }
  return specks;
}
