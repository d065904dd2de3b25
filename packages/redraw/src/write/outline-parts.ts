import type { OutlinePath, OutlinePiece, XY } from '../fit/outline-path.ts';

/** A stretch of an outline that is of lines and arcs alone, or of curves alone without corners. */
export interface OutlinePart {
  readonly start: XY;
  readonly pieces: readonly OutlinePiece[];
  /** Whether it is the whole outline. */
  readonly isClosed: boolean;
}

/** Curves whose tangents differ by more meet in a corner, radians: rounding of what is written turns them by less. */
const CORNER_RAD = 1e-3;

/** An outline in as few parts as it has changes from straight sides and arcs to curves, and corners between curves. */
export function outlineParts({ start, pieces }: OutlinePath): readonly OutlinePart[] {
  const n = pieces.length;
  const at = (k: number): OutlinePiece => pieces[(k + n) % n] as OutlinePiece;
  const isBreak = (k: number): boolean => isParted(at(k - 1), at(k), at(k - 1).to);
  const breaks = Array.from({ length: n }, (_, k) => k).filter(isBreak);
  const [first] = breaks;
  if (first === undefined) {
    return [{ start, pieces, isClosed: true }];
  }
  return breaks.map((from, k) => {
    const to = breaks[k + 1] ?? first + n;
    return {
      start: at(from - 1).to,
      pieces: Array.from({ length: to - from }, (_, i) => at(from + i)),
      isClosed: breaks.length === 1,
    };
  });
}

function isParted(before: OutlinePiece, after: OutlinePiece, [x, y]: XY): boolean {
  if (before.kind !== 'cubic' || after.kind !== 'cubic') {
    return before.kind === 'cubic' || after.kind === 'cubic';
  }
  const [[ux, uy], [vx, vy]] = [before.control[1], after.control[0]];
  const [ax, ay, bx, by] = [x - ux, y - uy, vx - x, vy - y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > CORNER_RAD;
}
