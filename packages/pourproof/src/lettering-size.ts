import { ArtworkError } from '@pourproof/artwork';
import type { ArtworkSize } from '@pourproof/job';
import { inchesFromMm, type LengthUnit } from '@pourproof/plane';

const SIZES = 'the height of its capitals (capHeight), such as 15mm, or its width, such as 120mm';
/** Steps of a length that is typed, in mm and in inches (our choice: finer than a bit follows), and what rounding leaves below one. */
const STEP_MM = 0.01;
const STEP_IN = 0.001;
const STEP_ROUNDING = 1e-6;

/**
 * The one size that lettering has.
 *
 * @throws {ArtworkError} `lettering-size-missing`, `lettering-size-conflict` or `lettering-size-unfit` where a job gives none, two, or one
 *   that only sizes drawings
 */
export function letteringSize(
  { widthMm, heightMm, scale, capHeightMm }: ArtworkSize,
  unit: LengthUnit,
): { readonly capHeightMm: number } | { readonly widthMm: number } {
  if (scale !== undefined || heightMm !== undefined) {
    throw new ArtworkError(
      'lettering-size-unfit',
      `${scale === undefined ? 'height' : 'scale'} does not size lettering.`,
      scale !== undefined && capHeightMm !== undefined
        ? `Leave it out and make capHeight ${typedLength(capHeightMm * scale, unit)}, which is ${scale} times as large.`
        : `Give ${SIZES}.`,
    );
  }
  if (capHeightMm !== undefined && widthMm !== undefined) {
    throw new ArtworkError(
      'lettering-size-conflict',
      'capHeight and width are given together, and they may disagree.',
      'Give one of them.',
    );
  }
  if (capHeightMm !== undefined) {
    return { capHeightMm };
  }
  if (widthMm !== undefined) {
    return { widthMm };
  }
  throw new ArtworkError('lettering-size-missing', 'The lettering has no size.', `Give ${SIZES}.`);
}

/** A length as it is typed, never less than it is. */
function typedLength(mm: number, unit: LengthUnit): string {
  const [value, step] = unit === 'in' ? [inchesFromMm(mm), STEP_IN] : [mm, STEP_MM];
  const steps = Math.ceil(value / step - STEP_ROUNDING);
  return `${Number((steps * step).toFixed(4))}${unit}`;
}
