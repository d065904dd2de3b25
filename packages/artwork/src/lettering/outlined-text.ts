import type { Region, Transform } from '@pourproof/plane';
import type { ShapeOptions } from './shape-options.ts';

/** How a run of text in a drawing is set. */
export interface OutlineTextOptions extends ShapeOptions {
  /**
   * Size of the em in the drawing's units: SVG's font-size; for a given height of capitals, that height ÷
   * `font.capHeightEm`.
   */
  readonly emSize: number;
  /** From the drawing's units, x along the text, y down, origin on the baseline, to mm. */
  readonly toMm: Transform;
  /** What a unit of `toMm`'s result is in mm where a further map follows; 1 by default. */
  readonly unitMm?: number;
  /**
   * Which point of the run is at the origin; `start` by default (for text from right to left its right end).
   */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Added after each letter, in the drawing's units. */
  readonly letterSpacing?: number;
  /** Added after each space, in the drawing's units. */
  readonly wordSpacing?: number;
  /** Added after each letter like `letterSpacing`, but without parting ligatures. */
  readonly stretch?: number;
  /**
   * Moves letters one by one, in the drawing's units: from where the letter stands on its straight baseline
   * to where it goes, as for text along a path or with a list of places. `null` leaves the letter out, as
   * past the end of a path.
   */
  readonly moveLetter?: (letter: RunLetter) => Transform | null;
  readonly toleranceMm?: number;
}

/** A letter, or a ligature, at its place in a straight run, in the drawing's units. */
export interface RunLetter {
  /** UTF-16 indices of its first character and of the character after its last. */
  readonly index: number;
  readonly end: number;
  /** Where it starts along the baseline, anchoring done, and how far the next one is. */
  readonly x: number;
  readonly advance: number;
}

/** A glyph of a run as an area in mm. */
export interface OutlinedGlyph {
  readonly region: Region;
  /** The characters that it stands for. */
  readonly text: string;
  /** UTF-16 index of the first of them in the text. */
  readonly index: number;
}

/** A run of text as outlines. */
export interface OutlinedText {
  readonly glyphs: readonly OutlinedGlyph[];
  /** Length of the run along its baseline in the drawing's units. */
  readonly advance: number;
  /** How many letters it has, a ligature counted as one. */
  readonly letters: number;
  /** Whether the font says nothing about the place of a mark that occurs. */
  readonly looseMarks: boolean;
}
