import { type Point, type Rings, ringStart } from '@pourproof/plane';
import { fibreVector } from './fibre-vector.ts';

/** A connected stretch of wall that cuts across the fibre. */
export interface WallRun {
  readonly lengthMm: number;
  /** The run's length weighted with its exposure |n·f|, in mm. */
  readonly exposedMm: number;
  /** Exposed over plain length, 0 to 1. */
  readonly meanExposure: number;
  /** The point half-way along the run. */
  readonly atMm: Point;
  /**
   * The run as an open polyline `[x0,y0,x1,y1,…]`; closed by its first point when the whole ring is one run.
   */
  readonly path: Float64Array;
}

/** What counts as a run. */
export interface WallRunOptions {
  /** Edges with |n·f| of at least this belong to a run, 0 to 1. */
  readonly minExposure: number;
  /** Less exposed stretches up to this length, mm, do not separate two runs. */
  readonly joinGapMm: number;
  /** Shorter runs are left out. */
  readonly minLengthMm: number;
}

/**
 * The stretches of boundary whose exposure of end grain |n·f| is at least a limit, in the order of the rings.
 *
 * Gaps that are joined belong to the path, length and exposed length of the run. Degenerate rings have no
 * runs.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * wallRuns(bar, 0, { minExposure: 0.7, joinGapMm: 1, minLengthMm: 1 }).map((run) => run.lengthMm).join(); // 5,5
 *
 * @param grainRad azimuth of the fibre, see {@link fibreVector}
 * @throws {RangeError} when the exposure is outside 0 to 1 or a length is negative
 */
export function wallRuns(region: Rings, grainRad: number, options: WallRunOptions): readonly WallRun[] {
  const { minExposure, joinGapMm, minLengthMm } = options;
  if (!(minExposure >= 0 && minExposure <= 1)) {
    throw new RangeError(`minExposure must be from 0 to 1, not ${minExposure}`);
  }
  if (!(joinGapMm >= 0 && minLengthMm >= 0)) {
    throw new RangeError(`joinGapMm and minLengthMm must not be negative: ${joinGapMm}, ${minLengthMm}`);
  }
  const runs: WallRun[] = [];
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringExposure(region, ringStart(region, k), region.ringEnds[k], grainRad);
    const isIn = joinGaps(ring, minExposure, joinGapMm);
    for (const run of runsOfRing(ring, isIn)) {
      if (run.lengthMm >= minLengthMm && run.lengthMm > 0) {
        runs.push(run);
      }
    }
  }
  return runs;
}

interface RingExposure {
  readonly points: Float64Array;
  readonly lengths: Float64Array;
  readonly exposed: Float64Array;
}

function ringExposure(region: Rings, from: number, to: number, grainRad: number): RingExposure {
  const [fx, fy] = fibreVector(grainRad);
  const n = to - from;
  const points = region.coords.subarray(2 * from, 2 * to);
  const lengths = new Float64Array(n);
  const exposed = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const dx = points[2 * j] - points[2 * i];
    const dy = points[2 * j + 1] - points[2 * i + 1];
    lengths[i] = Math.hypot(dx, dy);
    exposed[i] = Math.abs(dx * fy - dy * fx);
  }
  return { points, lengths, exposed };
}

/** Absolute tolerance on |n·f|, its rounding in doubles: an edge drawn exactly at the limit is in. */
const EXPOSURE_TOL = 1e-12;

function joinGaps(ring: RingExposure, minExposure: number, joinGapMm: number): Uint8Array {
  const n = ring.lengths.length;
  const isIn = new Uint8Array(n);
  for (let i = 0; i < n; i++) {
    isIn[i] = Number(
      ring.exposed[i] >= (minExposure - EXPOSURE_TOL) * ring.lengths[i] && ring.lengths[i] > 0,
    );
  }
  const first = isIn.indexOf(1);
  if (first < 0) {
    return isIn;
  }
  let gapStart = -1;
  let gap = 0;
  for (let step = 1; step <= n; step++) {
    const i = (first + step) % n;
    if (isIn[i] === 0) {
      gapStart = gapStart < 0 ? step : gapStart;
      gap += ring.lengths[i];
      continue;
    }
    if (gapStart >= 0 && gap <= joinGapMm) {
      for (let back = gapStart; back < step; back++) {
        isIn[(first + back) % n] = 1;
      }
    }
    gapStart = -1;
    gap = 0;
  }
  return isIn;
}

function runsOfRing(ring: RingExposure, isIn: Uint8Array): WallRun[] {
  const n = isIn.length;
  const outside = isIn.indexOf(0);
  if (outside < 0) {
    return n < 2 ? [] : [makeRun(ring, 0, n)];
  }
  const runs: WallRun[] = [];
  let start = -1;
  for (let step = 1; step <= n; step++) {
    const i = (outside + step) % n;
    if (isIn[i] === 1 && start < 0) {
      start = outside + step;
    } else if (isIn[i] === 0 && start >= 0) {
      runs.push(makeRun(ring, start, outside + step));
      start = -1;
    }
  }
  return runs;
}

function makeRun(ring: RingExposure, start: number, end: number): WallRun {
  const { points, lengths, exposed } = ring;
  const n = lengths.length;
  const path = new Float64Array(2 * (end - start + 1));
  let lengthMm = 0;
  let exposedMm = 0;
  for (let at = start; at <= end; at++) {
    const i = at % n;
    path[2 * (at - start)] = points[2 * i];
    path[2 * (at - start) + 1] = points[2 * i + 1];
    if (at < end) {
      lengthMm += lengths[i];
      exposedMm += exposed[i];
    }
  }
  return {
    lengthMm,
    exposedMm,
    meanExposure: lengthMm > 0 ? exposedMm / lengthMm : 0,
    atMm: halfWay(path),
    path,
  };
}

function halfWay(path: Float64Array): Point {
  let left = 0;
  for (let i = 2; i < path.length; i += 2) {
    left += Math.hypot(path[i] - path[i - 2], path[i + 1] - path[i - 1]);
  }
  left /= 2;
  for (let i = 2; i < path.length; i += 2) {
    const step = Math.hypot(path[i] - path[i - 2], path[i + 1] - path[i - 1]);
    if (step >= left && step > 0) {
      const t = left / step;
      return [path[i - 2] + t * (path[i] - path[i - 2]), path[i - 1] + t * (path[i + 1] - path[i - 1])];
    }
    left -= step;
  }
  return [path[0], path[1]];
}
