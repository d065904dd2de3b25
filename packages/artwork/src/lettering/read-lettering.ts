import {
  compose,
  DEFAULT_FLATTEN_TOLERANCE_MM,
  type Drawing,
  type DrawnShape,
  formatLength,
  type LengthUnit,
  perimeter,
  signedArea,
  textInUnits,
  translation,
} from '@pourproof/plane';
import { glyphNodes, glyphRings } from './glyph-outline.ts';
import { layOutText } from './lay-out-text.ts';
import type { LayoutOptions } from './layout-options.ts';
import { letterNames } from './letter-names.ts';
import { letterShape } from './letter-shape.ts';
import type { LetteringFont } from './lettering-font.ts';
import { letteringRefusal } from './lettering-refusals.ts';
import { refuseMissingGlyphs } from './missing-glyphs.ts';
import { openFont } from './open-font.ts';
import { type OpenedFont, openedFont } from './opened-font.ts';
import type { Layout, Letter } from './place-lines.ts';
import { settingNotices } from './setting-notices.ts';
import { typedText } from './typed-text.ts';

/**
 * Area over perimeter² below which a letter is a line drawn there and back: a rectangle that is 250 000 times
 * longer than wide. A circle has 0.08, the thinnest letter of our test fonts 0.0016.
 */
const MIN_ISOPERIMETRIC = 1e-6;

/** How text becomes artwork. */
export interface LetteringOptions extends LayoutOptions {
  /** Bytes of a font file, or a font that {@link openFont} made ready. */
  readonly font: Uint8Array | LetteringFont;
  /** Values of a variable font's axes by tag; only with bytes. */
  readonly axes?: Readonly<Record<string, number>>;
  /** Largest deviation of the polylines from the letters' curves; 5 µm by default. */
  readonly toleranceMm?: number;
}

/**
 * A drawing of `text` in mm: one shape for each glyph, in reading order, filled by the non-zero rule of
 * fonts.
 *
 * Straight lettering has the top left corner of its visible box at the origin; on an arc the circle's centre
 * is the origin. Letters that overlap, as those of a joined script do, become one area when the shapes are
 * united.
 *
 * @throws {ArtworkError} when the font or the text cannot be used; see {@link openFont} and `missing-glyph`,
 *   `lettering-blank`, `lettering-size`, `lettering-arc-radius`, `lettering-arc-length`
 * @throws {RangeError} when an option is out of its range
 *
 * @example
 * ```ts
 * const drawing = await readLettering('Oak & Ash', { font: bytesOfFontFile, capHeightMm: 20 });
 * drawing.shapes.length; // one shape for each visible glyph
 * ```
 */
export async function readLettering(text: string, options: LetteringOptions): Promise<Drawing> {
  const { axes, toleranceMm = DEFAULT_FLATTEN_TOLERANCE_MM } = options;
  if (!(toleranceMm > 0)) {
    throw new RangeError(`toleranceMm must be above 0, not ${toleranceMm}`);
  }
  const font = openedFont(
    options.font instanceof Uint8Array
      ? await openFont(options.font, axes === undefined ? {} : { axes })
      : options.font,
  );
  const layout = layOutText(font, text, options);
  refuseMissingGlyphs(
    font,
    layout.letters.map(({ cluster, line }) => ({
      cluster,
      line,
      lineText: layout.lines[line - 1] as string,
    })),
  );
  const names = letterNames(layout);
  const shapes: DrawnShape[] = [];
  const blank = new Set<Letter>();
  for (const letter of layout.letters) {
    const drawn = drawLetter(font, letter, names, toleranceMm);
    shapes.push(...drawn);
    if (drawn.length === 0 && /[\p{L}\p{M}\p{N}\p{P}\p{S}]/u.test(letter.text)) {
      blank.add(letter);
    }
  }
  refuseBareLines(font, shapes);
  return {
    format: 'lettering',
    scaleSource: textInUnits((unit) => scaleSource(font, layout, options, unit)),
    shapes,
    notices: settingNotices(font, text, layout, options, blank),
    toleranceMm,
  };
}

function drawLetter(
  font: OpenedFont,
  letter: Letter,
  names: ReadonlyMap<Letter, string>,
  toleranceMm: number,
): DrawnShape[] {
  return letter.cluster.glyphs.flatMap((g) => {
    const rings = glyphRings(font, g.glyph, compose(letter.emToMm, translation(g.x, g.y)), toleranceMm);
    return letterShape(rings, names.get(letter) as string, glyphNodes(font, g.glyph));
  });
}

// fonts for plotters draw each line there and back, which encloses nothing
function refuseBareLines(font: LetteringFont, shapes: readonly DrawnShape[]): void {
  const thick = shapes.some(
    ({ region }) => Math.abs(signedArea(region)) > MIN_ISOPERIMETRIC * perimeter(region) ** 2,
  );
  if (!thick) {
    throw letteringRefusal('font-single-line', { font: font.name });
  }
}

function scaleSource(font: LetteringFont, layout: Layout, options: LayoutOptions, unit: LengthUnit): string {
  const from = font.capHeightFrom === 'H' ? 'measured on the H' : 'as the font states it';
  if (options.capHeightMm !== undefined) {
    return `cap height ${typedText(options.capHeightMm, unit)}, ${from}`;
  }
  const cap =
    font.capHeightEm === undefined
      ? ''
      : `, which makes the cap height ${formatLength(font.capHeightEm * layout.mmPerEm, unit)}`;
  return `width ${typedText(options.widthMm ?? 0, unit)}${cap}`;
}
