import { radians, ringCoords, type Transform } from '@pourproof/plane';
import { findFont } from '../lettering/find-font.ts';
import type { LetteringFont } from '../lettering/lettering-font.ts';
import type { OutlinedText } from '../lettering/outlined-text.ts';
import { type DxfMap, mapPoint, planeAt } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';
import { type DxfRecord, hasCode, numberOf, textOf } from './dxf-record.ts';
import { mtextLines, plainDxfText } from './dxf-text.ts';

/** Cap height as a fraction of the em where a font does not state it (common practice). */
const USUAL_CAP_HEIGHT = 0.7;
/** How far letters hang below the baseline, as a part of the height of capitals (from memory). */
const DESCENT = 1 / 3;
/** Distance of baselines of MTEXT as a multiple of the text height (DXF reference, MTEXT code 44). */
const LINE_STEP = 5 / 3;

/** Where a line of text stands: the drawing's units, x along the text and y up from its baseline, to mm. */
interface Stand {
  readonly toMm: Transform;
  readonly anchor: 'start' | 'middle' | 'end';
}

/**
 * Draws a TEXT, ATTRIB or MTEXT as outlines in the first of the fonts given, capitals as high as the entity
 * says. The entity's own font, and changes of font or size within an MTEXT, are ignored with a notice.
 * Without a font, a notice quotes the words.
 *
 * @throws {ArtworkError} `missing-glyph` when the font has no letter for a character
 */
export function drawText(record: DxfRecord, map: DxfMap, pen: DxfPen, fonts: readonly LetteringFont[]): void {
  const isMtext = record.type === 'MTEXT';
  const lines = isMtext ? mtextLines(mtextOf(record)) : [plainDxfText(textOf(record, 1))];
  const words = lines.join(' ').trim();
  const font = findFont(fonts, { families: [] })?.font;
  if (words === '') {
    pen.notice('zero-size');
    return;
  }
  if (!font) {
    pen.notice('text-not-outlined', `"${words.length > 40 ? `${words.slice(0, 40)}…` : words}"`);
    return;
  }
  const height = numberOf(record, 40, 0);
  if (!(height > 0)) {
    pen.notice('zero-size');
    return;
  }
  const emSize = height / (font.capHeightEm ?? USUAL_CAP_HEIGHT);
  const set = (text: string, { toMm, anchor }: Stand): OutlinedText =>
    font.outlineText(text, { emSize, toMm, anchor, toleranceMm: pen.toleranceMm });
  if (isMtext) {
    drawMtext(record, map, lines, height, (text, stand) => drawGlyphs(set(text, stand), pen));
  } else {
    drawLineOfText(record, map, words, height, pen, set);
  }
  pen.notice('text-in-given-font', font.name);
}

function mtextOf(record: DxfRecord): string {
  // long texts come in chunks under code 3, the last under code 1
  return record.values.filter((_, i) => record.codes[i] === 3 || record.codes[i] === 1).join('');
}

function drawGlyphs({ glyphs }: OutlinedText, pen: DxfPen): void {
  for (const { region } of glyphs) {
    const rings = Array.from(region.ringEnds, (_, k) => Array.from(ringCoords(region, k)));
    pen.area(rings, region.fillRule);
  }
}

/**
 * A TEXT: one line, by its first point or, when it is aligned in any way, by its second (codes 72 and 73).
 */
function drawLineOfText(
  record: DxfRecord,
  map: DxfMap,
  text: string,
  height: number,
  pen: DxfPen,
  set: (text: string, stand: Stand) => OutlinedText,
): void {
  const across = numberOf(record, 72, 0);
  const up = numberOf(record, record.type === 'ATTRIB' && hasCode(record, 74) ? 74 : 73, 0);
  const second = (across !== 0 || up !== 0) && hasCode(record, 11);
  const [x1, y1] = [numberOf(record, 10, 0), numberOf(record, 20, 0)];
  const [x2, y2] = [numberOf(record, 11, 0), numberOf(record, 21, 0)];
  const fitted = (across === 3 || across === 5) && hasCode(record, 11);
  const [x, y] = second && !fitted ? [x2, y2] : [x1, y1];
  const angle = fitted ? Math.atan2(y2 - y1, x2 - x1) : radians(numberOf(record, 50, 0));
  const flags = numberOf(record, 71, 0);
  const rise = across === 4 || up === 2 ? height / 2 : up === 3 ? height : up === 1 ? -height * DESCENT : 0;
  const shear = Math.tan(radians(numberOf(record, 51, 0)));
  const mirrorX = (flags & 2) !== 0 ? -1 : 1;
  const mirrorY = (flags & 4) !== 0 ? -1 : 1;
  const standAt = (wide: number, high: number): Stand => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const [sx, sy] = [wide * mirrorX, high * mirrorY];
    // text space has y down; a point h above the baseline leans forward by h·tan of the slant
    const local: Transform = [
      c * sx,
      s * sx,
      s * sy - c * shear * sx,
      -c * sy - s * shear * sx,
      x + s * rise * mirrorY,
      y - c * rise * mirrorY,
    ];
    const anchor = across === 1 || across === 4 ? 'middle' : across === 2 ? 'end' : 'start';
    return { toMm: throughPlane(local, map, numberOf(record, 30, 0)), anchor };
  };
  const wide = numberOf(record, 41, 1);
  if (!fitted) {
    drawGlyphs(set(text, standAt(wide, 1)), pen);
    return;
  }
  // between two points: as wide as they are apart, and as high in proportion or as the height says
  const { advance } = set(text, standAt(1, 1));
  const stretch = advance > 0 ? Math.hypot(x2 - x1, y2 - y1) / advance : 1;
  drawGlyphs(set(text, standAt(stretch, across === 3 ? stretch : 1)), pen);
}

/**
 * An MTEXT: lines below one another, placed by one of nine attachment points (code 71: rows from the top,
 * columns from the left).
 */
function drawMtext(
  record: DxfRecord,
  map: DxfMap,
  lines: readonly string[],
  height: number,
  draw: (text: string, stand: Stand) => void,
): void {
  const attachment = Math.min(9, Math.max(1, numberOf(record, 71, 1))) - 1;
  const anchor = (['start', 'middle', 'end'] as const)[attachment % 3] ?? 'start';
  const row = Math.floor(attachment / 3);
  const step = LINE_STEP * height * numberOf(record, 44, 1);
  const below = (lines.length - 1) * step;
  // height of the first baseline above the attachment point
  const first = [-height, (below - height) / 2, below + height * DESCENT][row] ?? -height;
  const angle = hasCode(record, 11)
    ? Math.atan2(numberOf(record, 21, 0), numberOf(record, 11, 1))
    : radians(numberOf(record, 50, 0));
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  lines.forEach((text, k) => {
    const up = first - k * step;
    const local: Transform = [
      c,
      s,
      s,
      -c,
      numberOf(record, 10, 0) - s * up,
      numberOf(record, 20, 0) + c * up,
    ];
    draw(text, { toMm: throughPlane(local, map, numberOf(record, 30, 0)), anchor });
  });
}

/** A map into an object plane, carried on to mm. */
function throughPlane([a, b, c, d, e, f]: Transform, map: DxfMap, elevation: number): Transform {
  const { xx, xy, yx, yy } = planeAt(map, elevation);
  const [ox, oy] = mapPoint(map, e, f, elevation);
  return [xx * a + yx * b, xy * a + yy * b, xx * c + yx * d, xy * c + yy * d, ox, oy];
}
