/**
 * Refuses a radius that is not a finite length of 0 or more.
 *
 * @throws {RangeError} when the radius is negative or not finite
 */
export function checkRadius(radiusMm: number): void {
  if (!(radiusMm >= 0 && Number.isFinite(radiusMm))) {
    throw new RangeError(`radiusMm is ${radiusMm}; give a number of millimetres, 0 or more`);
  }
}
