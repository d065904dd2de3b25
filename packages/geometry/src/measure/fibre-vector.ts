import type { Point } from '@pourproof/plane';

/**
 * Unit vector of the fibre on the face for a grain azimuth in radians, which is counted counter-clockwise as seen on the face
 * from the artwork's x axis: with y down that is (cos a, −sin a).
 */
export function fibreVector(grainRad: number): Point {
  return [Math.cos(grainRad), -Math.sin(grainRad)];
}
