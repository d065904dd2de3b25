import type { MaterialsBook } from '@pourproof/materials';
import type { LengthUnit } from '@pourproof/plane';

/**
 * Diameters of flat bits at hand below a diameter, in mm, largest first: all of a maker's own, of those in trade the
 * sizes made in the maker's unit where there are any.
 */
export function flatBitsBelow(
  diameterMm: number,
  unit: LengthUnit,
  cutters: MaterialsBook['cutters'],
): readonly number[] {
  const smaller = cutters.value.filter((size) => size.shape === 'flat' && size.diameterMm < diameterMm);
  const own = smaller.filter((size) => cutters.status === 'entered' || size.label.endsWith(unit));
  return (own.length > 0 ? own : smaller).map((size) => size.diameterMm).toSorted((a, b) => b - a);
}
