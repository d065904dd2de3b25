import type { LetteringArc } from '@pourproof/artwork';
import { MeasureError, parseMeasure } from '@pourproof/plane';
import { oneOf, type ParsedFlags, typedValue } from './parse-flags.ts';
import { UsageError } from './usage-error.ts';

/** How lettering is set beyond its size. */
export interface LetteringSetting {
  /** Letters of single strokes, as wide as the smallest bit, instead of a font's outlines. */
  readonly isSingleLine: boolean;
  readonly align?: 'left' | 'centre' | 'right';
  readonly trackingMm?: number;
  readonly lineSpacing?: number;
  readonly arc?: LetteringArc;
  /** Values of a variable font's axes by tag. */
  readonly axes?: Readonly<Record<string, number>>;
}

/** Flags of lettering that mean nothing on a file. */
const LETTERING_ONLY: readonly string[] = ['single-line', 'align', 'tracking', 'line-spacing', 'arc', 'axis'];

/**
 * Reads how lettering is set.
 *
 * @throws {UsageError} when a value cannot be read
 */
export function letteringSetting(flags: ParsedFlags): LetteringSetting {
  const align = oneOf(flags, 'align', ['left', 'centre', 'right']);
  const tracking = typedValue(flags, 'tracking');
  const spacing = typedValue(flags, 'line-spacing');
  const arc = typedValue(flags, 'arc');
  const axes = flags.values.get('axis');
  return {
    isSingleLine: flags.values.has('single-line'),
    ...(align === undefined ? {} : { align }),
    ...(tracking === undefined ? {} : { trackingMm: lengthMm('tracking', tracking) }),
    ...(spacing === undefined ? {} : { lineSpacing: factor('line-spacing', spacing) }),
    ...(arc === undefined ? {} : { arc: arcFrom(arc) }),
    ...(axes === undefined ? {} : { axes: Object.fromEntries(axes.map(axisFrom)) }),
  };
}

/** Refuses flags of lettering where a file is vetted, rather than ignoring them. */
export function refuseLetteringFlags(flags: ParsedFlags): void {
  const stray = LETTERING_ONLY.find((name) => flags.values.has(name));
  if (stray !== undefined) {
    throw new UsageError(
      `--${stray} sets lettering, but a file is vetted.`,
      `Leave it out, or give --text "…".`,
    );
  }
}

function arcFrom(text: string): LetteringArc {
  const [radius = '', side = 'over', ...rest] = text.trim().split(/\s+/u);
  if ((side !== 'over' && side !== 'under') || rest.length > 0) {
    throw new UsageError(
      `--arc "${text}" is not a radius and a side.`,
      'Write --arc 80mm, or --arc "80mm under".',
    );
  }
  const radiusMm = lengthMm('arc', radius);
  if (!(radiusMm > 0)) {
    throw new UsageError(
      `--arc "${text}" has no radius above 0.`,
      'Write --arc 80mm, or --arc "80mm under".',
    );
  }
  return { radiusMm, side };
}

function axisFrom(text: string): [string, number] {
  const match = /^([A-Za-z][A-Za-z0-9]{3})=(-?\d+(?:\.\d+)?)$/u.exec(text.trim());
  if (match === null) {
    throw new UsageError(
      `--axis "${text}" is not a tag of four letters and a number.`,
      'Write it like --axis wght=600; the font’s maker says which axes it has.',
    );
  }
  return [match[1] as string, Number(match[2])];
}

function factor(name: string, text: string): number {
  const value = Number(text);
  if (!(value > 0 && value <= 100)) {
    throw new UsageError(`--${name} "${text}" is not a factor above 0, at most 100.`, 'Write it like 1.2.');
  }
  return value;
}

function lengthMm(name: string, text: string): number {
  try {
    return parseMeasure(text, 'length').value;
  } catch (error) {
    if (error instanceof MeasureError) {
      throw new UsageError(`--${name}: ${error.message}`, `Write it like --${name} 0.5mm.`);
    }
    throw error;
  }
}
