import { type CleanRegion, ringCoords } from '@pourproof/plane';

/** What lies nearer to an edge than this is not within, mm: far above rounding, far below the accuracy of a saw. */
const EDGE_MM = 1e-3;

/** Whether a cut lies wholly within a block and away from its edges; of a block that is not convex it is never said. */
export function isWithin(cut: CleanRegion, block: CleanRegion): boolean {
  if (block.ringEnds.length !== 1) {
    return false;
  }
  const ring = ringCoords(block, 0);
  for (let i = 0; i < ring.length; i += 2) {
    const [ax, ay] = [ring[i] as number, ring[i + 1] as number];
    const [ex, ey] = [at(ring, i + 2) - ax, at(ring, i + 3) - ay];
    const length = Math.sqrt(ex * ex + ey * ey);
    const [fx, fy] = [at(ring, i + 4) - at(ring, i + 2), at(ring, i + 5) - at(ring, i + 3)];
    // the inside of a clean ring is on the side of (−ey, ex)
    if (ex * fy - ey * fx < 0) {
      return false;
    }
    const [nx, ny] = [-ey / length, ex / length];
    for (let k = 0; k < cut.coords.length; k += 2) {
      if (nx * (at(cut.coords, k) - ax) + ny * (at(cut.coords, k + 1) - ay) < EDGE_MM) {
        return false;
      }
    }
  }
  return true;
}

/** A number of a ring, round and round. */
function at(ring: Float64Array, k: number): number {
  return ring[k % ring.length] as number;
}
