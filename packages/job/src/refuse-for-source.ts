import { inchesFromMm, type LengthUnit } from '@pourproof/plane';
import type { Job, SourceKind } from './job.ts';
import { JobError } from './refusals/job-error.ts';
import type { JobInput, SettingKey } from './settings/table.ts';

type Settled = Pick<Job, 'size' | 'lettering' | 'units' | 'given'> & { readonly source: SourceKind | null };

/** Settings that the reading of artwork uses up. */
const OF_READING: readonly SettingKey[] = [
  ...(['width', 'height', 'scale', 'carve', 'fileUnit', 'join'] as const),
  ...(['widen', 'leastStroke', 'joins', 'keepApart', 'roundTips', 'roundCorners', 'colourWall'] as const),
  ...([
    'text',
    'font',
    'capHeight',
    'singleLine',
    'align',
    'tracking',
    'lineSpacing',
    'arc',
    'axis',
  ] as const),
];

/**
 * Refuses what contradicts the kind of source that a job was settled for. What merely changes nothing for it
 * is named by {@link idleSettings} instead.
 *
 * @param hasFont whether a font is at hand for lettering
 * @throws {JobError}
 */
export function refuseForSource(job: Settled, input: JobInput, hasFont: boolean): void {
  switch (job.source) {
    case 'file':
      if (input.text !== undefined) {
        throw new JobError('text-for-file', 'text', {});
      }
      break;
    case 'lettering':
      if (input.artwork !== undefined) {
        throw new JobError('artwork-for-text', 'artwork', {});
      }
      refuseLetters(job, input, hasFont);
      refuseLetteringSize(job);
      break;
    case 'drawing':
      refuseReading(job);
      break;
    case null:
      break;
  }
}

/**
 * Refuses a job for a drawing that was read without it, where the job says how its artwork is read.
 *
 * @throws {JobError}
 */
export function refuseReading({ given }: Pick<Job, 'given'>): void {
  const key = given.find((each) => OF_READING.includes(each));
  if (key !== undefined) {
    throw new JobError('not-for-drawing', key, {});
  }
}

function refuseLetters({ lettering }: Settled, { font, axis }: JobInput, hasFont: boolean): void {
  const isFontGiven = hasFont || font !== undefined;
  if (lettering.isSingleLine && (isFontGiven || axis !== undefined)) {
    throw new JobError('font-and-single-line', isFontGiven ? 'font' : 'axis', {});
  }
  if (!lettering.isSingleLine && !hasFont) {
    throw new JobError('lettering-without-font', 'font', {});
  }
}

function refuseLetteringSize({ size, lettering, units }: Settled): void {
  const { widthMm, heightMm, scale } = size;
  const { capHeightMm } = lettering;
  if (heightMm !== undefined || scale !== undefined) {
    const instead =
      scale === undefined || capHeightMm === undefined ? null : typedLength(capHeightMm * scale, units);
    throw new JobError('lettering-size', scale === undefined ? 'height' : 'scale', {
      scale: scale ?? null,
      instead,
    });
  }
  if (capHeightMm !== undefined && widthMm !== undefined) {
    throw new JobError('lettering-two-sizes', 'capHeight', {});
  }
  if (capHeightMm === undefined && widthMm === undefined) {
    throw new JobError('lettering-without-size', 'capHeight', {});
  }
}

/** Rounding of a product of a length and a factor, in steps of what is typed. */
const STEP_TOL = 1e-6;

/** A length as it is typed, never less than it is. */
function typedLength(mm: number, unit: LengthUnit): string {
  return unit === 'in'
    ? `${Math.ceil(inchesFromMm(mm) * 1000 - STEP_TOL) / 1000}in`
    : `${Math.ceil(mm * 100 - STEP_TOL) / 100}mm`;
}
