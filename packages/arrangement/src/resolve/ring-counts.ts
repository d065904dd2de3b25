import { type CleanRegion, ringArea, ringStart } from '@pourproof/plane';

/** Number of connected parts of a region. Parts that touch in a point count apart. */
export function outerRingCount(region: CleanRegion): number {
  return countRings(region, 1);
}

/** Number of holes of a region. A hole that touches its outline in a point is part of the outline and not counted. */
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
