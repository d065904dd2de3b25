import {
  compose,
  DEFAULT_FLATTEN_TOLERANCE_MM,
  IDENTITY,
  packRings,
  type Transform,
  translation,
} from '@pourproof/plane';
import { largestScale } from '../path/largest-scale.ts';
import type { Cluster } from './cluster.ts';
import { glyphRings } from './glyph-outline.ts';
import { refuseMissingGlyphs } from './missing-glyphs.ts';
import type { OpenedFont } from './opened-font.ts';
import type { OutlinedGlyph, OutlinedText, OutlineTextOptions } from './outlined-text.ts';
import { refuseHugeLetters } from './refuse-huge-letters.ts';
import { shapeLine } from './shape-line.ts';
import type { ShapeOptions } from './shape-options.ts';

/**
 * One line of text of a drawing as outlines in mm, shaped and kerned like {@link readLettering}, for text
 * elements of other formats. Blank text gives no glyphs. Regions are to be filled by their non-zero rule.
 *
 * @throws {ArtworkError} `missing-glyph` when the font has no letter for a character, `lettering-size` when
 *   the em is larger than any board
 */
export function outlineText(font: OpenedFont, text: string, options: OutlineTextOptions): OutlinedText {
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
  font: OpenedFont,
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
