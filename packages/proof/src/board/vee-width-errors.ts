import { veeWidthLossMm } from '@pourproof/materials';
import { degrees, type Point } from '@pourproof/plane';
import type { FaceHeights } from './face-heights.ts';

/** Errors of the width of V strokes on a face that is not flat, mm. */
export interface VeeWidthErrors {
  /** Largest loss of width, at the lowest point; 0 or more. */
  readonly narrowerByMm: number;
  readonly narrowerAt: Point;
  /** Largest gain of width, at the highest point; 0 or more. */
  readonly widerByMm: number;
  readonly widerAt: Point;
}

/**
 * Width errors of a V cut on a face that is not flat: where the face is Δz lower than where the bit was set,
 * the cut is shallower by Δz and narrower by 2 Δz tan(A/2); where it is higher, as much wider.
 *
 * Upper bounds where a depth limit or the diameter of the bit limits the width.
 * @param includedRad angle between the walls
 * @throws {RangeError} when the angle is not between 0 and π
 */
export function veeWidthErrors(heights: FaceHeights, includedRad: number): VeeWidthErrors {
  if (!(includedRad > 0 && includedRad < Math.PI)) {
    throw new RangeError(`includedRad is ${includedRad}; it lies between 0 and π.`);
  }
  const angleDeg = degrees(includedRad);
  return {
    narrowerByMm: veeWidthLossMm(Math.max(0, -heights.lowestMm), angleDeg),
    narrowerAt: heights.lowestAt,
    widerByMm: veeWidthLossMm(Math.max(0, heights.highestMm), angleDeg),
    widerAt: heights.highestAt,
  };
}
