import { pollStep } from '@pourproof/plane';
/** Path of a cutter's tip in runs; between runs it retracts out of the wood. */
export interface CutterPath {
  /** `[x, y, depth, …]`, mm; depth below the face, never negative. */
  readonly points: Float64Array;
  /**
   * Bulge, seen from above, of the move from each point to the next of its run; 0 for a straight move and at
   * the last point.
   */
  readonly bulges: Float64Array;
  /** Index one past the last point of each run. */
  readonly runEnds: Uint32Array;
}

/** Length of the move from point i to the next, mm; along an arc the depth changes linearly. */
export function moveLength({ points, bulges }: CutterPath, i: number): number {
  const flat = arcLength(points[3 * i + 3] - points[3 * i], points[3 * i + 4] - points[3 * i + 1], bulges[i]);
  return Math.hypot(flat, points[3 * i + 5] - points[3 * i + 2]);
}

/**
 * Bulges below this take the series 1 + 2b²/3 of the arc's length, whose next term is below rounding; above
 * it the closed form loses no digits.
 */
const SERIES_BULGE = 1e-4;

/** Length of an arc over its chord, mm. */
export function arcLength(dx: number, dy: number, bulge: number): number {
  const chord = Math.hypot(dx, dy);
  const b = Math.abs(bulge);
  return b < SERIES_BULGE ? chord * (1 + (2 / 3) * b * b) : (chord * (1 + b * b) * Math.atan(b)) / b;
}

/** A run as a flat list `[x, y, depth, bulge, …]`. */
export type Run = readonly number[];

/** Packs runs in their order, translated by an origin; none may be empty. */
export function packRuns(runs: readonly Run[], originX = 0, originY = 0): CutterPath {
  const count = runs.reduce((n, run) => n + run.length / 4, 0);
  const points = new Float64Array(3 * count);
  const bulges = new Float64Array(count);
  const runEnds = new Uint32Array(runs.length);
  let at = 0;
  runs.forEach((run, k) => {
    for (let i = 0; i < run.length; i += 4) {
      pollStep();
      points[3 * at] = run[i] + originX;
      points[3 * at + 1] = run[i + 1] + originY;
      points[3 * at + 2] = run[i + 2];
      bulges[at++] = i + 4 === run.length ? 0 : run[i + 3];
    }
    runEnds[k] = at;
  });
  return { points, bulges, runEnds };
}
