import {
  DEFAULT_FLATTEN_TOLERANCE_MM,
  type Drawing,
  type DrawnShape,
  type LengthUnit,
  type Transform,
  textInUnits,
} from '@pourproof/plane';
import type { ArtworkError } from '../artwork-error.ts';
import type { InkBox } from './ink-box.ts';
import { splitLines } from './lay-out-text.ts';
import { letterNames } from './letter-names.ts';
import { letterShape } from './letter-shape.ts';
import { letteringRefusal } from './lettering-refusals.ts';
import { type Ink, type InkedLine, type PlacingOptions, placeLines } from './place-lines.ts';
import { STICK_CAP_HEIGHT, type StickStroke, stickLetter } from './stick-alphabet.ts';
import { arcBetween, sweptStroke } from './swept-stroke.ts';
import { typedText } from './typed-text.ts';

/**
 * Room on either side of a letter, width of a space and distance of baselines, in grid units of the stick
 * alphabet.
 */
const SIDE = 1.25;
const SPACE = 5;
const LINE = 21;
/** Strokes must stay narrower than this, in grid units, for the letters to stay open. */
const OPENING = 2;

/** How single-line lettering is set; sizes are over all, stroke width included. */
export interface StickLetteringOptions extends PlacingOptions {
  /** Width of every stroke: the diameter of the bit that cuts it in one pass. */
  readonly strokeMm: number;
  /** Largest deviation of the polylines from the strokes' curves; 5 µm by default. */
  readonly toleranceMm?: number;
}

/**
 * A drawing of `text` in single-line letters, each stroke exactly as wide as the bit: one shape for each
 * letter, non-zero.
 *
 * Capitals are `capHeightMm` tall, or the widest line `widthMm` wide, from edge to edge of the strokes. The
 * place of the origin is that of {@link readLettering}. Letters are those of Western European languages,
 * digits and common signs, from left to right.
 *
 * @throws {ArtworkError} `missing-glyph` for a character that the alphabet lacks, `lettering-stroke` when
 *   strokes are too wide for the size, and those of {@link readLettering} that concern size and arc
 * @throws {RangeError} when an option is out of its range
 *
 * @example
 * ```ts
 * const drawing = readStickLettering('No. 7', { strokeMm: 3, capHeightMm: 30 });
 * drawing.scaleSource.mm; // 'cap height 30 mm over all, strokes 3 mm wide'
 * ```
 */
export function readStickLettering(text: string, options: StickLetteringOptions): Drawing {
  const { strokeMm, toleranceMm = DEFAULT_FLATTEN_TOLERANCE_MM } = options;
  if (!(strokeMm > 0 && Number.isFinite(strokeMm)) || !(toleranceMm > 0)) {
    throw new RangeError('strokeMm and toleranceMm must be lengths above 0 mm');
  }
  const letters = new Map<string, readonly StickStroke[]>();
  const lines = splitLines(text).map((line, n) => measureStickLine(line, n + 1, letters));
  const layout = placeLines(
    lines,
    { capHeightEm: STICK_CAP_HEIGHT, lineEm: LINE },
    centreLineOptions(options),
  );
  checkStroke(layout.mmPerEm, strokeMm);
  const names = letterNames(layout);
  const half = options.arc ? 0 : strokeMm / 2;
  const shapes: DrawnShape[] = layout.letters.flatMap((letter) => {
    const [a, b, c, d, e, f] = letter.emToMm;
    const toMm: Transform = [a, b, c, d, e + half, f + half];
    const strokes = letters.get(letter.text) ?? [];
    const rings = strokes.flatMap((stroke) => sweptStroke(stroke, toMm, strokeMm, toleranceMm));
    return letterShape(rings, names.get(letter) as string);
  });
  return {
    format: 'lettering',
    scaleSource: textInUnits((unit) => scaleSource(options, unit)),
    shapes,
    notices: [],
    toleranceMm,
  };
}

function scaleSource({ widthMm, capHeightMm, strokeMm }: StickLetteringOptions, unit: LengthUnit): string {
  const size =
    capHeightMm === undefined
      ? `width ${typedText(widthMm ?? 0, unit)}`
      : `cap height ${typedText(capHeightMm, unit)}`;
  return `${size} over all, strokes ${typedText(strokeMm, unit)} wide`;
}

/** Sizes from centre line to centre line, and room for one stroke more between letters. */
function centreLineOptions(options: StickLetteringOptions): PlacingOptions {
  const { strokeMm } = options;
  const size = options.capHeightMm ?? options.widthMm ?? Number.NaN;
  if (size <= strokeMm) {
    throw tooWide(strokeMm);
  }
  return {
    ...options,
    ...(options.capHeightMm === undefined ? {} : { capHeightMm: options.capHeightMm - strokeMm }),
    ...(options.widthMm === undefined ? {} : { widthMm: options.widthMm - strokeMm }),
    trackingMm: (options.trackingMm ?? 0) + strokeMm,
  };
}

// the narrowest openings, between accents and letters, shut when strokes are two grid units wide
function checkStroke(mmPerUnit: number, strokeMm: number): void {
  if (strokeMm >= OPENING * mmPerUnit) {
    throw tooWide(strokeMm);
  }
}

function tooWide(strokeMm: number): ArtworkError {
  return letteringRefusal('lettering-stroke', {
    strokeMm,
    tallMm: (STICK_CAP_HEIGHT / OPENING + 1) * strokeMm,
  });
}

function measureStickLine(
  text: string,
  number: number,
  letters: Map<string, readonly StickStroke[]>,
): InkedLine {
  const clusters: { cluster: InkedLine['clusters'][number]['cluster']; x: number; steps: number }[] = [];
  const inks: Ink[] = [];
  let x = 0;
  for (const { segment, index } of new Intl.Segmenter(undefined, { granularity: 'grapheme' }).segment(text)) {
    const strokes = /^\s$/u.test(segment) ? [] : stickLetter(segment);
    if (strokes === undefined) {
      throw letteringRefusal('missing-glyph', { font: null, characters: [{ text: segment, line: number }] });
    }
    letters.set(
      segment,
      strokes.map((stroke) => shifted(stroke, SIDE - boxOf(strokes).minX)),
    );
    const drawn = letters.get(segment) ?? [];
    const box = boxOf(drawn);
    const advance = drawn.length === 0 ? SPACE : box.maxX + SIDE;
    const steps = clusters.length;
    if (drawn.length > 0) {
      inks.push({ ...box, minX: box.minX + x, maxX: box.maxX + x, steps });
    }
    const cluster = {
      start: index,
      end: index + segment.length,
      script: 'Latn',
      rightToLeft: false,
      advance,
      glyphs: [],
      looseMark: false,
    };
    clusters.push({ cluster, x, steps });
    x += advance;
  }
  return { text, clusters, inks };
}

function shifted(stroke: StickStroke, dx: number): StickStroke {
  return { ...stroke, x: stroke.x + dx, steps: stroke.steps.map((step) => ({ ...step, x: step.x + dx })) };
}

/** The box around centre lines, arcs included. */
function boxOf(strokes: readonly StickStroke[]): InkBox {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const stroke of strokes) {
    let [px, py] = [stroke.x, stroke.y];
    xs.push(px);
    ys.push(py);
    for (const { x, y, turn } of stroke.steps) {
      xs.push(x);
      ys.push(y);
      if (turn !== 0) {
        const arc = arcBetween([px, py], [x, y], turn);
        const [low, high] = turn > 0 ? [arc.start, arc.start + turn] : [arc.start + turn, arc.start];
        for (let k = Math.ceil(low / (Math.PI / 2)); k * (Math.PI / 2) <= high; k++) {
          xs.push(arc.cx + arc.r * Math.cos((k * Math.PI) / 2));
          ys.push(arc.cy + arc.r * Math.sin((k * Math.PI) / 2));
        }
      }
      [px, py] = [x, y];
    }
  }
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
