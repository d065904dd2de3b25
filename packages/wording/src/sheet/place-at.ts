import { formatLength, type LengthUnit, type Point } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';

/** Where a place lies from the left and top edges of the artwork, as a ruler reads it: `93.66 mm, 13.74 mm`. */
export function placeAt(
  { atMm }: { readonly atMm: Point },
  { rulerOffsetMm: [left, top] }: Pick<Report, 'rulerOffsetMm'>,
  unit: LengthUnit,
): string {
  return `${formatLength(atMm[0] - left, unit)}, ${formatLength(atMm[1] - top, unit)}`;
}
