import type { Point } from '@pourproof/plane';

/**
 * Unit vector of the fibre on the face for a grain azimuth in radians, counter-clockwise from the artwork's x
 * axis as seen on the face: with y down (cos a, −sin a).
 */
export function fibreVector(grainRad: number): Point {
  return [Math.cos(grainRad), -Math.sin(grainRad)];
}
