import { JobError } from './job-error.ts';
import type { JobFile } from './job-file.ts';
import { readLengthMm } from './read-length.ts';

/** Sizes beyond this are taken for a slip of the unit, in mm (our choice: no board is this long). */
const LONGEST_MM = 10_000;
/** The least and the largest factor (our choice; beyond, the file's unit is at fault). */
const SCALES: readonly [number, number] = [1e-4, 1e4];

/** Sizes that a job asks for, in mm; where none is, the file's own size stands. */
export interface ArtworkSize {
  readonly widthMm?: number;
  readonly heightMm?: number;
  readonly scale?: number;
  readonly capHeightMm?: number;
}

/**
 * The size that a job asks for: at most one of width, height and scale, and the height of capitals.
 *
 * @throws {JobError} when a size cannot be read or makes no sense, or when two are given that may disagree
 */
export function artworkSize({ width, height, scale, capHeight }: Partial<JobFile>): ArtworkSize {
  const given = Object.entries({ width, height, scale }).flatMap(([key, value]) =>
    value === undefined ? [] : [key],
  );
  if (given.length > 1) {
    throw new JobError(
      `${given.join(' and ')} are given together, and they may disagree. Check them, and give one of width, height and scale: the artwork keeps its proportions.`,
    );
  }
  const [least, most] = SCALES;
  if (scale !== undefined && !(scale >= least && scale <= most)) {
    throw new JobError(`scale is ${scale}; it must be a factor between ${least} and ${most}, such as 1.25.`);
  }
  return {
    ...(width === undefined ? {} : { widthMm: sizeMm('width', width) }),
    ...(height === undefined ? {} : { heightMm: sizeMm('height', height) }),
    ...(scale === undefined ? {} : { scale }),
    ...(capHeight === undefined ? {} : { capHeightMm: sizeMm('capHeight', capHeight) }),
  };
}

function sizeMm(key: string, text: string): number {
  const value = readLengthMm(key, text);
  if (!(value > 0)) {
    throw new JobError(`${key} is ${text}; it must be above 0, such as 120mm or 4-3/4in.`);
  }
  if (value > LONGEST_MM) {
    throw new JobError(`${key} is ${text}, longer than any board (10 m). Check its unit.`);
  }
  return value;
}
