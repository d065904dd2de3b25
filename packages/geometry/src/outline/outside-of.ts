import { type CleanRegion, packRings, type Rings, ringCoords, ringsBounds } from '@pourproof/plane';

/**
 * The wood around and between the artwork: a rectangle `marginMm` larger than the artwork's bounding box on
 * all sides, less the artwork. Its medial axis measures the slivers between pockets and in counters. Empty
 * for an empty region.
 *
 * @param marginMm above 0; gaps to the rectangle are no slivers, so give more than any width of interest
 * @throws {RangeError} when the margin is not above 0
 */
export function outsideOf(region: CleanRegion, marginMm: number): CleanRegion {
  if (!(marginMm > 0)) {
    throw new RangeError(`marginMm is ${marginMm}; give a number of millimetres above 0`);
  }
  const rings: ArrayLike<number>[] = [];
  if (region.ringEnds.length > 0) {
    const [minX, minY, maxX, maxY] = ringsBounds(region);
    const [left, top, right, bottom] = [minX - marginMm, minY - marginMm, maxX + marginMm, maxY + marginMm];
    rings.push([left, top, right, top, right, bottom, left, bottom]);
  }
  for (let k = 0; k < region.ringEnds.length; k++) {
    rings.push(backwards(region, k));
  }
  // reversed rings stay simple and apart, with the inside on the other side
  return packRings(rings) as CleanRegion;
}

function backwards(rings: Rings, k: number): Float64Array {
  const ring = ringCoords(rings, k);
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    out[i] = ring[ring.length - 2 - i];
    out[i + 1] = ring[ring.length - 1 - i];
  }
  return out;
}
