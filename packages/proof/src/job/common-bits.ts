import { cutterSizes } from '@pourproof/materials';
import type { LengthUnit } from '@pourproof/plane';

/**
 * Diameters of common flat bits below a diameter, in mm, largest first; sizes made in the maker's unit where there are any.
 */
export function flatBitsBelow(diameterMm: number, unit: LengthUnit): readonly number[] {
  const smaller = cutterSizes.value.filter((size) => size.shape === 'flat' && size.diameterMm < diameterMm);
  const own = smaller.filter((size) => size.label.endsWith(unit));
  return (own.length > 0 ? own : smaller).map((size) => size.diameterMm).toSorted((a, b) => b - a);
}
