/** Where the tip of a cutter goes, run by run; between runs it is lifted off the wood. */
export interface CutterPath {
  /** `[x, y, depth, …]`, mm; depth below the face, never negative. */
  readonly points: Float64Array;
  /**
   * Bulge, seen from above, of the move from each point to its successor in the run: 0 for a straight move
   * and at each run's last point.
   */
  readonly bulges: Float64Array;
  /** Index of the point after the last one of each run. */
  readonly runEnds: Uint32Array;
}

/**
 * Length in mm of all moves of a path in the wood, arcs and slopes included; 0 for no runs or runs of one
 * point.
 */
export function pathLength(path: CutterPath): number {
  let sum = 0;
  for (let k = 0; k < path.runEnds.length; k++) {
    const from = k === 0 ? 0 : path.runEnds[k - 1];
    for (let i = from; i < path.runEnds[k] - 1; i++) {
      sum += moveLength(path, i);
    }
  }
  return sum;
}

/** Length in mm of the move from point i to its successor; depth changes evenly along an arc. */
export function moveLength({ points, bulges }: CutterPath, i: number): number {
  const flat = arcLength(points[3 * i + 3] - points[3 * i], points[3 * i + 4] - points[3 * i + 1], bulges[i]);
  return Math.hypot(flat, points[3 * i + 5] - points[3 * i + 2]);
}

/** Length in mm of the arc over a chord; of the chord for bulge 0. */
export function arcLength(dx: number, dy: number, bulge: number): number {
  const chord = Math.hypot(dx, dy);
  const b = Math.abs(bulge);
  // below 1e-4 the series is exact to rounding, and above the closed form loses nothing
  return b < 1e-4 ? chord * (1 + (2 / 3) * b * b) : (chord * (1 + b * b) * Math.atan(b)) / b;
}

/** A run as a flat list `[x, y, depth, bulge, …]`. */
export type Run = readonly number[];

/** Packs runs in their order, moved by an origin; none of them may be empty. */
export function packRuns(runs: readonly Run[], originX = 0, originY = 0): CutterPath {
  const count = runs.reduce((n, run) => n + run.length / 4, 0);
  const points = new Float64Array(3 * count);
  const bulges = new Float64Array(count);
  const runEnds = new Uint32Array(runs.length);
  let at = 0;
  runs.forEach((run, k) => {
    for (let i = 0; i < run.length; i += 4) {
      points[3 * at] = run[i] + originX;
      points[3 * at + 1] = run[i + 1] + originY;
      points[3 * at + 2] = run[i + 2];
      bulges[at++] = i + 4 === run.length ? 0 : run[i + 3];
    }
    runEnds[k] = at;
  });
  return { points, bulges, runEnds };
}
