import { type CleanRegion, ringArea, ringStart } from '@pourproof/plane';

/** Number of connected parts of a region; parts that touch in a point count separately. */
export function outerRingCount(region: CleanRegion): number {
  return countRings(region, 1);
}

/**
 * Number of holes of a region. A hole that touches its outline in a point belongs to the outline and is not
 * counted.
 */
export function holeCount(region: CleanRegion): number {
  return countRings(region, -1);
}

function countRings(region: CleanRegion, sign: number): number {
  let count = 0;
  for (let k = 0; k < region.ringEnds.length; k++) {
    if (ringArea(region.coords, ringStart(region, k), region.ringEnds[k]) * sign > 0) {
      count++;
    }
  }
  return count;
}
