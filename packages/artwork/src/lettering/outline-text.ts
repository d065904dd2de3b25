import {
  compose,
  DEFAULT_FLATTEN_TOLERANCE_MM,
  IDENTITY,
  packRings,
  type Region,
  type Transform,
  translation,
} from '@pourproof/plane';
import { largestScale } from '../path/largest-scale.ts';
import { glyphRings } from './glyph-outline.ts';
import { refuseMissingGlyphs } from './missing-glyphs.ts';
import type { LetteringFont } from './open-font.ts';
import { refuseHugeLetters } from './refuse-huge-letters.ts';
import { type Cluster, type ShapeOptions, shapeLine } from './shape-line.ts';

/** How a run of text in a drawing is set. */
export interface OutlineTextOptions extends ShapeOptions {
  /** Size of the em in the drawing's units: SVG's font-size; for a given height of capitals, that height ÷ `font.capHeightEm`. */
  readonly emSize: number;
  /** From the drawing's units, x along the text, y down, origin on the baseline, to mm. */
  readonly toMm: Transform;
  /** What a unit of `toMm`'s result is in mm where a further map follows; 1 by default. */
  readonly unitMm?: number;
  /** Which point of the run is at the origin; `start` by default (for text from right to left its right end). */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Added after each letter, in the drawing's units. */
  readonly letterSpacing?: number;
  /** Added after each space, in the drawing's units. */
  readonly wordSpacing?: number;
  /** Added after each letter like `letterSpacing`, but without parting ligatures. */
  readonly stretch?: number;
  /**
   * Moves letters one by one, in the drawing's units: from where the letter stands on its straight baseline to where it goes, as for text
   * along a path or with a list of places. `null` leaves the letter out, as past the end of a path.
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

/**
 * One line of text of a drawing as outlines in mm, shaped and kerned like {@link readLettering}, for text elements of other formats.
 * Blank text gives no glyphs. Regions are to be filled by their non-zero rule.
 *
 * @throws {ArtworkError} `missing-glyph` when the font has no letter for a character, `lettering-size` when the em is larger than any board
 */
export function outlineText(font: LetteringFont, text: string, options: OutlineTextOptions): OutlinedText {
  const { emSize, toMm, letterSpacing = 0, wordSpacing = 0, stretch = 0 } = options;
  const toleranceMm = options.toleranceMm ?? DEFAULT_FLATTEN_TOLERANCE_MM;
  if (text.trim() !== '') {
    refuseHugeLetters(emSize * largestScale(toMm) * (options.unitMm ?? 1));
  }
  const shape: ShapeOptions =
    letterSpacing === 0 ? options : { ...options, features: ['-liga', '-clig', ...(options.features ?? [])] };
  const clusters = shapeLine(font, text, shape);
  refuseMissingGlyphs(
    font,
    clusters.map((cluster) => ({ cluster, lineText: text, line: 1 })),
  );
  const lengths = clusters.map((cluster) => {
    const space = /^\s+$/u.test(text.slice(cluster.start, cluster.end)) ? wordSpacing : 0;
    return cluster.advance * emSize + letterSpacing + stretch + space;
  });
  const advance = lengths.reduce((sum, length) => sum + length, 0);
  const first = clusters.reduce((a, b) => (b.start < a.start ? b : a), {
    start: Infinity,
    rightToLeft: false,
  });
  let x = -advance * anchorPart(options.anchor ?? 'start', first.rightToLeft);
  const glyphs: OutlinedGlyph[] = [];
  clusters.forEach((cluster, i) => {
    const letter = { index: cluster.start, end: cluster.end, x, advance: lengths[i] as number };
    const moved = options.moveLetter ? options.moveLetter(letter) : IDENTITY;
    if (moved !== null) {
      const emToMm = compose(compose(toMm, moved), [emSize, 0, 0, -emSize, x, 0]);
      glyphs.push(...drawCluster(font, text, cluster, emToMm, toleranceMm));
    }
    x += letter.advance;
  });
  const looseMarks = clusters.some((cluster) => cluster.looseMark);
  return { glyphs, advance, letters: clusters.length, looseMarks };
}

function drawCluster(
  font: LetteringFont,
  text: string,
  cluster: Cluster,
  emToMm: Transform,
  toleranceMm: number,
): OutlinedGlyph[] {
  return cluster.glyphs.flatMap((g) => {
    const rings = glyphRings(font, g.glyph, compose(emToMm, translation(g.x, g.y)), toleranceMm);
    return rings.length === 0
      ? []
      : [
          {
            region: { ...packRings(rings), fillRule: 'nonzero' as const },
            text: text.slice(cluster.start, cluster.end),
            index: cluster.start,
          },
        ];
  });
}

function anchorPart(anchor: 'start' | 'middle' | 'end', rightToLeft: boolean): number {
  const part = { start: 0, middle: 0.5, end: 1 }[anchor];
  return rightToLeft ? 1 - part : part;
}
