import { type CleanRegion, ringStart } from '@pourproof/plane';
import { isInside } from './is-inside.ts';

/**
 * Parts of the segment from (ax, ay) to (bx, by) inside a region, as pairs of shares of its length from 0 to
 * 1, in order.
 *
 * A part along an edge of the region belongs to it if the region is on the side of (nx, ny), so that regions
 * that tile the plane divide every segment completely.
 *
 * @param nx direction, of any length, of the side that counts for parts along an edge
 */
export function clipSegment(
  region: CleanRegion,
  [ax, ay, bx, by]: readonly [number, number, number, number],
  [nx, ny]: readonly [number, number],
): readonly (readonly [from: number, to: number])[] {
  const shares = crossings(region, ax, ay, bx, by);
  const length = Math.hypot(nx, ny);
  const ux = length > 0 ? (nx / length) * SIDE_MM : 0;
  const uy = length > 0 ? (ny / length) * SIDE_MM : 0;
  const parts: (readonly [number, number])[] = [];
  for (let k = 0; k + 1 < shares.length; k++) {
    const from = shares[k] as number;
    const to = shares[k + 1] as number;
    const middle = (from + to) / 2;
    if (to > from && isInside(region, ax + middle * (bx - ax) + ux, ay + middle * (by - ay) + uy)) {
      const last = parts.at(-1);
      if (last !== undefined && last[1] === from) {
        parts[parts.length - 1] = [last[0], to];
      } else {
        parts.push([from, to]);
      }
    }
  }
  return parts;
}

/** Distance beside a segment at which the side is tested, mm: far below the accuracy of a saw or a bit. */
const SIDE_MM = 1e-6;

/** A segment meets an edge within this share beyond its ends: rounding. */
const END_TOL = 1e-12;

/** Shares at which the segment meets edges of the region, with 0 and 1, in rising order. */
function crossings(region: CleanRegion, ax: number, ay: number, bx: number, by: number): number[] {
  const shares = [0, 1];
  const dx = bx - ax;
  const dy = by - ay;
  const { coords } = region;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const start = ringStart(region, k);
    const end = region.ringEnds[k] as number;
    for (let i = start; i < end; i++) {
      const j = i + 1 === end ? start : i + 1;
      const px = coords[2 * i] as number;
      const py = coords[2 * i + 1] as number;
      const ex = (coords[2 * j] as number) - px;
      const ey = (coords[2 * j + 1] as number) - py;
      const across = dx * ey - dy * ex;
      if (across === 0) {
        continue;
      }
      const share = ((px - ax) * ey - (py - ay) * ex) / across;
      const along = ((px - ax) * dy - (py - ay) * dx) / across;
      if (share > 0 && share < 1 && along >= -END_TOL && along <= 1 + END_TOL) {
        shares.push(share);
      }
    }
  }
  return shares.sort((a, b) => a - b);
}
