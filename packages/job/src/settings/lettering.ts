import * as z from 'zod/mini';
import { JobError } from '../refusals/job-error.ts';
import { readMeasure, shownInput } from '../values/measure-input.ts';
import { LETTER_SIZE } from './artwork.ts';
import { choice, listOf, measure, number, tick, written } from './holds.ts';
import type { Rows } from './setting.ts';

const SIDES = ['left', 'centre', 'right'] as const;
const ARC_SIDES = ['over', 'under'] as const;

/** A circle that lettering is bent over. */
export interface Arc {
  readonly radiusMm: number;
  readonly side: (typeof ARC_SIDES)[number];
}

/** A circle as typed, such as `80mm under`, or as a structure. */
export type ArcInput = string | { readonly radiusMm: number; readonly side?: Arc['side'] | undefined };
/** A value of a variable font's axis as typed, such as `wght=600`, or as a structure. */
export type AxisInput = string | { readonly tag: string; readonly value: number };

/**
 * How lettering is set beyond its words and font; what the job does not say is absent and left to the reader.
 * Lengths in mm.
 */
export interface LetteringSetting {
  readonly capHeightMm?: number;
  /** Letters of single strokes, as wide as the smallest bit, instead of a font's outlines. */
  readonly isSingleLine: boolean;
  /** Edge on which lines meet. */
  readonly align?: (typeof SIDES)[number];
  readonly trackingMm?: number;
  /** Distance of lines as a factor of the font's own. */
  readonly lineSpacing?: number;
  readonly arc?: Arc;
  /** Values of a variable font's axes by tag. */
  readonly axes?: Readonly<Record<string, number>>;
}

const arcSchema = z.union([
  z.string(),
  z.strictObject({ radiusMm: z.number(), side: z.optional(z.enum(ARC_SIDES)) }),
]);
const axisSchema = z.union([z.string(), z.strictObject({ tag: z.string(), value: z.number() })]);

const AXES = listOf(
  written<AxisInput, readonly [string, number]>(axisSchema, '', readAxis, typedAxis),
  'a list of axes, such as ["wght=600"] or [{"tag": "wght", "value": 600}]',
);

/** Settings of lettering. */
export const LETTERING_SETTINGS = {
  capHeight: {
    holds: measure('length', '15mm', LETTER_SIZE),
    field: 'capHeightMm',
    otherwise: 'lettering needs it, or a width',
    group: 'lettering',
    takes: 'LENGTH',
    help: 'Height of its capitals',
    only: { formats: ['lettering'], about: 'the height of capitals' },
  },
  singleLine: {
    holds: tick(),
    field: 'isSingleLine',
    absent: false,
    otherwise: 'letters of the font',
    group: 'lettering',
    help: 'Letters of single strokes as wide as the smallest bit, without a font',
    only: { formats: ['lettering'], about: 'letters of single strokes' },
  },
  align: {
    holds: choice(SIDES),
    field: 'align',
    otherwise: 'left; on an arc centre',
    group: 'lettering',
    takes: 'SIDE',
    help: 'left (default), centre or right',
    only: { formats: ['lettering'], hasLines: true, about: 'the alignment of lettering' },
  },
  tracking: {
    holds: measure('length', '0.5mm', { min: -1000, max: 1000 }),
    field: 'trackingMm',
    otherwise: 'none',
    group: 'lettering',
    takes: 'LENGTH',
    help: 'Room added between letters',
    only: { formats: ['lettering'], about: 'the room between letters' },
  },
  lineSpacing: {
    // beyond 100 a unit was meant (our choice)
    holds: number('a factor without a unit', 1.2, { percent: 'hundredths', above: 0, max: 100 }),
    field: 'lineSpacing',
    otherwise: 'as the font says',
    group: 'lettering',
    takes: 'NUMBER',
    help: 'Distance of lines, as a factor of the font’s own',
    only: { formats: ['lettering'], hasLines: true, about: 'the distance of lines' },
  },
  arc: {
    holds: written<ArcInput, Arc>(
      arcSchema,
      'a radius and a side, such as "80mm", "80mm under" or {"radiusMm": 80, "side": "under"}',
      readArc,
      typedArc,
      { hasWorkLengths: true },
    ),
    field: 'arc',
    otherwise: 'straight lines',
    group: 'lettering',
    takes: '"RADIUS SIDE"',
    help: 'Bend it over a circle, such as 80mm or "80mm under"',
    only: { formats: ['lettering'], about: 'the arc of lettering' },
  },
  axis: {
    holds: {
      ...AXES,
      settle: (inputs: readonly AxisInput[]): Readonly<Record<string, number>> =>
        Object.fromEntries(inputs.map(readAxis)),
    },
    field: 'axes',
    otherwise: 'as the font says',
    group: 'lettering',
    takes: 'TAG=NUMBER',
    help: 'Axis of a variable font, such as wght=600',
    only: { formats: ['lettering'], about: 'an axis of a variable font' },
  },
} as const satisfies Rows<LetteringSetting>;

/** On a circle this wide a line of a metre bends by 0.13 mm; places on far wider ones lose digits. */
const WIDEST_ARC_MM = 1e6;
const MM_PER_M = 1000;

function readArc(input: ArcInput): Arc {
  const arc = typeof input === 'string' ? parseArc(input) : { side: 'over' as const, ...input };
  if (!(arc.radiusMm > 0)) {
    throw new JobError('arc-without-radius', 'arc', { shown: shownInput(input) });
  }
  if (!(arc.radiusMm <= WIDEST_ARC_MM)) {
    throw new JobError('arc-too-wide', 'arc', { shown: shownInput(input), limitM: WIDEST_ARC_MM / MM_PER_M });
  }
  return { radiusMm: arc.radiusMm, side: arc.side ?? 'over' };
}

function parseArc(text: string): Arc {
  const [radius = '', typed = 'over', ...rest] = text.trim().split(/\s+/u);
  const side = ARC_SIDES.find((each) => each === typed);
  if (side === undefined || rest.length > 0) {
    throw new JobError('not-an-arc', 'arc', { shown: text });
  }
  return { radiusMm: readMeasure('arc', radius, 'length'), side };
}

function readAxis(input: AxisInput): readonly [string, number] {
  const text = typedAxis(input).trim();
  const [, tag, value] = /^([A-Za-z][A-Za-z0-9]{3})=(-?\d+(?:\.\d+)?)$/u.exec(text) ?? [];
  if (tag === undefined) {
    throw new JobError('not-an-axis', 'axis', { shown: shownInput(input) });
  }
  return [tag, Number(value)];
}

function typedArc(arc: ArcInput): string {
  return typeof arc === 'string' ? arc : `${arc.radiusMm}mm${arc.side === 'under' ? ' under' : ''}`;
}

function typedAxis(axis: AxisInput): string {
  return typeof axis === 'string' ? axis : `${axis.tag}=${axis.value}`;
}
