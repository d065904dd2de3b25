import { type CleanRegion, ringCoords, ringStart } from '@pourproof/plane';

/** What lies nearer to an edge than this is not within, mm: far above rounding, far below the accuracy of a saw. */
const EDGE_MM = 1e-3;

/** Whether a cut lies wholly within a block and away from its edges; of a block that is not convex it is never said. */
export function isWithin(cut: CleanRegion, block: CleanRegion): boolean {
  const sides = sidesOf(block);
  return sides?.every((side) => every(cut, (x, y) => side(x, y) >= EDGE_MM)) ?? false;
}

/** Whether a cut has no wall along an edge of a block, so that it only crosses them; of a block that is not convex it is never said. */
export function onlyCrosses(cut: CleanRegion, block: CleanRegion): boolean {
  const sides = sidesOf(block);
  return (
    sides?.every((side) => {
      const isOn = (i: number): boolean =>
        Math.abs(side(cut.coords[2 * i] as number, cut.coords[2 * i + 1] as number)) < EDGE_MM;
      return cut.ringEnds.every((to, k) => {
        const from = ringStart(cut, k);
        for (let i = from; i < to; i++) {
          if (isOn(i) && isOn(i + 1 === to ? from : i + 1)) {
            return false;
          }
        }
        return true;
      });
    }) ?? false
  );
}

/** How far inside an edge of a block a point lies, mm; negative beyond it. */
type Side = (x: number, y: number) => number;

/** The sides of a convex block; `null` of any other. */
function sidesOf(block: CleanRegion): readonly Side[] | null {
  if (block.ringEnds.length !== 1) {
    return null;
  }
  const ring = ringCoords(block, 0);
  const sides: Side[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const [ax, ay] = [at(ring, i), at(ring, i + 1)];
    const [ex, ey] = [at(ring, i + 2) - ax, at(ring, i + 3) - ay];
    const [fx, fy] = [at(ring, i + 4) - at(ring, i + 2), at(ring, i + 5) - at(ring, i + 3)];
    // the inside of a clean ring is on the side of (−ey, ex)
    if (ex * fy - ey * fx < 0) {
      return null;
    }
    const length = Math.sqrt(ex * ex + ey * ey);
    sides.push((x, y) => (ex * (y - ay) - ey * (x - ax)) / length);
  }
  return sides;
}

function every(cut: CleanRegion, holds: (x: number, y: number) => boolean): boolean {
  for (let i = 0; i < cut.coords.length; i += 2) {
    if (!holds(cut.coords[i] as number, cut.coords[i + 1] as number)) {
      return false;
    }
  }
  return true;
}

/** A number of a ring, round and round. */
function at(ring: Float64Array, k: number): number {
  return ring[k % ring.length] as number;
}
