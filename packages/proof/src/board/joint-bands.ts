import { type CleanRegion, ringCoords, ringsBounds } from '@pourproof/plane';
import { clipSegment } from './clip-segment.ts';

/** A stretch of an edge, as shares of its length. */
type Part = readonly [from: number, to: number];

/**
 * What colour sweeps from walls exactly on the edge of a block that is on the side of the wood: one
 * parallelogram for each stretch, `[x0, y0, …]`, in the block and oriented like an outer ring.
 *
 * Such a wall bounds no part of the cut in its block, so sweeping that part misses it; but the wood behind it
 * is the block's, with open pores.
 * @param region the block
 * @param reach travel along the block's fibres, as a vector on the face
 */
export function jointBands(
  cut: CleanRegion,
  region: CleanRegion,
  [dx, dy]: readonly [number, number],
): readonly (readonly number[])[] {
  const [left, top, right, bottom] = ringsBounds(region);
  const bands: number[][] = [];
  for (let k = 0; k < cut.ringEnds.length; k++) {
    const ring = ringCoords(cut, k);
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[j], ring[j + 1]] as [
        number,
        number,
        number,
        number,
      ];
      const isNear =
        Math.max(ax, bx) >= left &&
        Math.min(ax, bx) <= right &&
        Math.max(ay, by) >= top &&
        Math.min(ay, by) <= bottom;
      // the normal (ey, −ex) of an edge points out of the cut, into the wood
      const facing = (by - ay) * dx - (bx - ax) * dy;
      if (!isNear || facing === 0) {
        continue;
      }
      const edge = [ax, ay, bx, by] as const;
      const wood = clipSegment(region, edge, [by - ay, ax - bx]);
      const sign = Math.sign(facing);
      for (const [from, to] of without(wood, clipSegment(region, edge, [ay - by, bx - ax]))) {
        bands.push(bandOf(edge, from, to, [sign * dx, sign * dy]));
      }
    }
  }
  return bands;
}

/** Stretches shorter than this share of their edge are rounding. */
const MIN_STRETCH_SHARE = 1e-9;

/** Stretches of the first list outside those of the second; both in order. */
function without(parts: readonly Part[], taken: readonly Part[]): readonly Part[] {
  const left: Part[] = [];
  for (const [from, to] of parts) {
    let at = from;
    for (const [start, end] of taken) {
      if (start > at && start < to) {
        left.push([at, start]);
      }
      at = Math.max(at, Math.min(to, end));
    }
    left.push([at, to]);
  }
  return left.filter(([from, to]) => to - from > MIN_STRETCH_SHARE);
}

function bandOf(
  [ax, ay, bx, by]: readonly [number, number, number, number],
  from: number,
  to: number,
  [dx, dy]: readonly [number, number],
): number[] {
  const [px, py] = [ax + from * (bx - ax), ay + from * (by - ay)];
  const [qx, qy] = [ax + to * (bx - ax), ay + to * (by - ay)];
  // from the far end back and out: with y down, wood is on the left of a wall in its direction
  return [qx, qy, px, py, px + dx, py + dy, qx + dx, qy + dy];
}
