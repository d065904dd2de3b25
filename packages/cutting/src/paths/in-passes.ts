import { pollStep } from '@pourproof/plane';
import { arcCentre } from './arc-centre.ts';
import { type CutterPath, packRuns, type Run } from './cutter-path.ts';

/**
 * Ends closer than this in plan are the same point, mm: rounding (our choice; far below what any machine
 * resolves).
 */
const SAME_POINT_TOL_MM = 1e-7;

/**
 * Depths of equal passes down to a depth, mm, the deepest last; none takes more than `deepestPassMm`. No
 * passes for depth 0.
 *
 * @throws {RangeError} when the depth is negative or infinite, or the pass not above 0
 */
export function equalPasses(depthMm: number, deepestPassMm: number): readonly number[] {
  if (!(depthMm >= 0 && depthMm < Infinity)) {
    throw new RangeError(`depthMm is ${depthMm}; give a number of millimetres, 0 or more`);
  }
  if (!(deepestPassMm > 0)) {
    throw new RangeError(`deepestPassMm is ${deepestPassMm}; give a number of millimetres above 0`);
  }
  // rounding of the ratio must not add a pass
  const count = Math.ceil((depthMm / deepestPassMm) * (1 - 4 * Number.EPSILON));
  return Array.from({ length: count }, (_, k) => (depthMm * (k + 1)) / count);
}

/**
 * A path in passes: at each depth but the last, the stretches that lead deeper, level at that depth; at last
 * the path itself. A level path is thus cut once at every depth; a V cut gets level passes and a finishing
 * one. A pass goes on without a retract where the one before ended, forwards or backwards, if it can.
 *
 * @param depthsMm in rising order; the last is the path's own greatest depth
 */
export function inPasses(path: CutterPath, depthsMm: readonly number[]): CutterPath {
  return packRuns(Array.from(path.runEnds, (_, k) => runInPasses(runAt(path, k), depthsMm)).flat());
}

/** The same for one run; a level closed run stays one run. */
export function runInPasses(whole: Run, depthsMm: readonly number[]): Run[] {
  const out: number[][] = [];
  const stretches = depthsMm.slice(0, -1).flatMap((depth): Run[] => stretchesBelow(whole, depth));
  for (const stretch of [...stretches, whole]) {
    const open = out.at(-1);
    const next = open === undefined ? undefined : goingOn(open, stretch);
    if (open !== undefined && next !== undefined) {
      append(open, next);
    } else {
      out.push(stretch.slice());
    }
  }
  return out;
}

function runAt({ points, bulges, runEnds }: CutterPath, k: number): number[] {
  const run: number[] = [];
  for (let i = k === 0 ? 0 : runEnds[k - 1]; i < runEnds[k]; i++) {
    pollStep();
    run.push(points[3 * i], points[3 * i + 1], points[3 * i + 2], bulges[i]);
  }
  return run;
}

/**
 * The stretches of a run that lie deeper than a depth, moved up to it; stretches that continue at the same
 * point are merged.
 */
function stretchesBelow(run: Run, depth: number): number[][] {
  const stretches: number[][] = [];
  let current: number[] | undefined;
  const add = (x: number, y: number): number[] => {
    if (current === undefined) {
      const last = stretches.at(-1);
      if (last !== undefined && isSame(last[last.length - 4], last[last.length - 3], x, y)) {
        current = last;
        return current;
      }
      current = [];
      stretches.push(current);
    }
    current.push(x, y, depth, 0);
    return current;
  };
  const count = run.length / 4;
  if (count === 1 && run[2] > depth) {
    add(run[0], run[1]);
  }
  for (let i = 0; i + 1 < count; i++) {
    pollStep();
    const z0 = run[4 * i + 2];
    const z1 = run[4 * i + 6];
    if (z0 <= depth && z1 <= depth) {
      current = undefined;
      continue;
    }
    const cut = (depth - z0) / (z1 - z0);
    const from = z0 > depth ? 0 : cut;
    const to = z1 > depth ? 1 : cut;
    if (current === undefined) {
      add(...pointOn(run, i, from));
    }
    const list = current ?? [];
    list[list.length - 1] = partOfBulge(run[4 * i + 3], to - from);
    add(...pointOn(run, i, to));
    if (to < 1) {
      current = undefined;
    }
  }
  return stretches;
}

/** The point at a share of move i, in plan. */
function pointOn(run: Run, i: number, share: number): [number, number] {
  const [ax, ay, , bulge, bx, by] = run.slice(4 * i, 4 * i + 6);
  if (bulge === 0 || share === 0 || share === 1) {
    return share === 1 ? [bx, by] : [ax + share * (bx - ax), ay + share * (by - ay)];
  }
  const turn = 4 * Math.atan(bulge);
  const [cx, cy] = arcCentre(ax, ay, bx, by, bulge);
  const [c, s] = [Math.cos(share * turn), Math.sin(share * turn)];
  return [cx + (ax - cx) * c - (ay - cy) * s, cy + (ax - cx) * s + (ay - cy) * c];
}

function partOfBulge(bulge: number, share: number): number {
  return share === 1 ? bulge : Math.tan(Math.atan(bulge) * share);
}

/**
 * The next stretch, reversed if need be, so that it starts where the run ends; undefined if neither end is
 * there.
 */
function goingOn(run: Run, next: Run): Run | undefined {
  const x = run[run.length - 4];
  const y = run[run.length - 3];
  if (isSame(x, y, next[0], next[1])) {
    return next;
  }
  return isSame(x, y, next[next.length - 4], next[next.length - 3]) ? backwards(next) : undefined;
}

function append(run: number[], next: Run): void {
  run[run.length - 1] = 0;
  for (const value of next) {
    run.push(value);
  }
}

function backwards(run: Run): Run {
  const out: number[] = [];
  for (let i = run.length - 4; i >= 0; i -= 4) {
    out.push(run[i], run[i + 1], run[i + 2], i > 0 ? -run[i - 1] : 0);
  }
  return out;
}

function isSame(ax: number, ay: number, bx: number, by: number): boolean {
  return Math.abs(ax - bx) <= SAME_POINT_TOL_MM && Math.abs(ay - by) <= SAME_POINT_TOL_MM;
}
