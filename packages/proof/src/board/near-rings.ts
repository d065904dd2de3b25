import { type Bounds, boundsOf, type CleanRegion, packRings, ringCoords } from '@pourproof/plane';

/**
 * The rings of a region whose boxes meet a box: the same region inside the box; outside it holes may be
 * missing.
 *
 * This keeps dividing a large drawing among many blocks near-linear.
 */
export function nearRings(region: CleanRegion, [left, top, right, bottom]: Bounds): CleanRegion {
  const near: Float64Array[] = [];
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringCoords(region, k);
    const [x0, y0, x1, y1] = boundsOf(ring);
    if (x1 >= left && x0 <= right && y1 >= top && y0 <= bottom) {
      near.push(ring);
    }
  }
  // whole outlines of a clean region with those of their holes that meet the box: still simple and nested
  return packRings(near) as CleanRegion;
}
