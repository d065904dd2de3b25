import type * as HarfBuzz from 'harfbuzzjs';
import type { KernPairs } from './legacy-kern.ts';
import type { LetteringFont } from './lettering-font.ts';

/**
 * A font with the objects of the shaping library, for the files of this folder only: their types stay out of
 * the package's own.
 */
export interface OpenedFont extends LetteringFont {
  /** HarfBuzz units in an em. */
  readonly unitsPerEm: number;
  /** Pairs of the old `kern` table, in font units; empty when the font kerns by GPOS. */
  readonly kern: KernPairs;
  readonly kernUnitsPerEm: number;
  /** Whether the font positions marks on letters by anchors. */
  readonly placesMarks: boolean;
  readonly shaper: typeof HarfBuzz;
  readonly shaped: HarfBuzz.Font;
}

/**
 * The font with what `openFont` keeps beside its public fields.
 *
 * @throws {TypeError} for an object that `openFont` did not make
 */
export function openedFont(font: LetteringFont): OpenedFont {
  if (!('shaped' in font)) {
    throw new TypeError('the font must be bytes, or a font that openFont has made ready');
  }
  return font as OpenedFont;
}
