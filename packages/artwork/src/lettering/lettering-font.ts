import type { Notice } from '@pourproof/plane';
import type { OutlinedText, OutlineTextOptions } from './outlined-text.ts';

/** An axis along which a variable font can be changed. */
export interface FontAxis {
  readonly tag: string;
  readonly min: number;
  readonly default: number;
  readonly max: number;
}

/**
 * A font made ready for setting text; made by `openFont`, valid for the life of the program. The readers of
 * drawings take fonts in this form and set text by {@link LetteringFont.outlineText} alone, so that a program
 * that gives them none never loads the shaping library.
 */
export interface LetteringFont {
  /** Family and style as the font states them. */
  readonly name: string;
  /** Family alone, as a style sheet names it. */
  readonly family: string;
  /**
   * Weight from 1 to 1000 as the font states it, 400 regular; of a variable font the value of its `wght`
   * axis.
   */
  readonly weight: number;
  readonly italic: boolean;
  /** Cap height as a fraction of the em; absent when the font neither states it nor has an H. */
  readonly capHeightEm?: number;
  /** Where the cap height came from: the font's OS/2 table, or the outline of its H. */
  readonly capHeightFrom: 'OS/2' | 'H';
  /** Distance of baselines as a fraction of the em: ascent, descent and line gap as the font states them. */
  readonly lineEm: number;
  /** Axes of a variable font; empty for others. */
  readonly axes: readonly FontAxis[];
  /** Notices about the font itself. */
  readonly notices: readonly Notice[];
  /**
   * One line of text as outlines in mm, shaped and kerned by the font's own tables. Blank text gives no
   * glyphs. Regions are to be filled by their non-zero rule.
   *
   * @throws {ArtworkError} `missing-glyph` when the font has no glyph for a character, `lettering-size` when
   *   the em is larger than any board
   */
  readonly outlineText: (text: string, options: OutlineTextOptions) => OutlinedText;
}
