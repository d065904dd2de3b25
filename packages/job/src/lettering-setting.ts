import { JobError } from './job-error.ts';
import type { JobFile } from './job-file.ts';
import { readLengthMm } from './read-length.ts';

/** Edges on which lines of lettering may meet. */
export const LETTERING_SIDES = ['left', 'centre', 'right'] as const;
/** Most that lines may be pulled apart (our choice; beyond, a unit was meant). */
const MOST_LINE_SPACING = 100;

/** How lettering is set beyond its words, font and size. Lengths in mm. */
export interface LetteringSetting {
  /** Letters of single strokes, as wide as the smallest bit, instead of a font's outlines. */
  readonly isSingleLine: boolean;
  readonly align?: 'left' | 'centre' | 'right';
  readonly trackingMm?: number;
  readonly lineSpacing?: number;
  readonly arc?: { readonly radiusMm: number; readonly side: 'over' | 'under' };
  /** Values of a variable font's axes by tag. */
  readonly axes?: Readonly<Record<string, number>>;
}

/**
 * How a job sets its lettering; what the job does not say is absent and left to the reader's own defaults.
 *
 * @throws {JobError} when a value cannot be read
 */
export function letteringSetting({
  singleLine,
  align,
  tracking,
  lineSpacing,
  arc,
  axis,
}: Partial<JobFile>): LetteringSetting {
  return {
    isSingleLine: singleLine ?? false,
    ...(align === undefined ? {} : { align }),
    ...(tracking === undefined ? {} : { trackingMm: readLengthMm('tracking', tracking) }),
    ...(lineSpacing === undefined ? {} : { lineSpacing: factor(lineSpacing) }),
    ...(arc === undefined ? {} : { arc: arcFrom(arc) }),
    ...(axis === undefined ? {} : { axes: Object.fromEntries(axis.map(axisFrom)) }),
  };
}

function factor(value: number): number {
  if (!(value > 0 && value <= MOST_LINE_SPACING)) {
    throw new JobError(
      `lineSpacing is ${value}; it must be a factor above 0, at most ${MOST_LINE_SPACING}, such as 1.2.`,
    );
  }
  return value;
}

function arcFrom(text: string): NonNullable<LetteringSetting['arc']> {
  const [radius = '', side = 'over', ...rest] = text.trim().split(/\s+/u);
  if ((side !== 'over' && side !== 'under') || rest.length > 0) {
    throw new JobError(`arc "${text}" is not a radius and a side. Write it like "80mm" or "80mm under".`);
  }
  const radiusMm = readLengthMm('arc', radius);
  if (!(radiusMm > 0)) {
    throw new JobError(`arc "${text}" has no radius above 0. Write it like "80mm" or "80mm under".`);
  }
  return { radiusMm, side };
}

function axisFrom(text: string): [string, number] {
  const [, tag, value] = /^([A-Za-z][A-Za-z0-9]{3})=(-?\d+(?:\.\d+)?)$/u.exec(text.trim()) ?? [];
  if (tag === undefined) {
    throw new JobError(
      `axis "${text}" is not a tag of four letters and a number. Write it like "wght=600"; the font’s maker says which axes it has.`,
    );
  }
  return [tag, Number(value)];
}
