import type { CleanRegion } from '@pourproof/plane';
import { clipSegment } from './clip-segment.ts';

/**
 * Pieces of an open line `[x0, y0, x1, y1, …]` inside a region, in order; the whole line if there is no
 * region.
 *
 * The line runs like a clean ring, with the inside on its right as seen with y down: a piece along an edge of
 * the region belongs to the side of the wood.
 */
export function clipPath(path: Float64Array, region: CleanRegion | null): readonly Float64Array[] {
  if (region === null) {
    return [path];
  }
  const pieces: number[][] = [];
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = path.subarray(i, i + 4) as unknown as [number, number, number, number];
    for (const [from, to] of clipSegment(region, [ax, ay, bx, by], [by - ay, ax - bx])) {
      const last = pieces.at(-1);
      const end: [number, number] = [ax + to * (bx - ax), ay + to * (by - ay)];
      if (from === 0 && i > 0 && last !== undefined && last.at(-2) === ax && last.at(-1) === ay) {
        last.push(...end);
      } else {
        pieces.push([ax + from * (bx - ax), ay + from * (by - ay), ...end]);
      }
    }
  }
  return pieces.map((piece) => Float64Array.from(piece));
}
