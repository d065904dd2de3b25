import { JobError } from './job-error.ts';
import type { JobFile } from './job-file.ts';
import { readLengthMm } from './read-length.ts';

/** What of an SVG may be carved. */
export const CARVE_MODES = ['all', 'visible'] as const;
/** Units that a DXF drawing may be in. */
export const FILE_UNITS = ['mm', 'cm', 'm', 'in', 'ft'] as const;

/** How a file is read beyond its size. */
export interface FileReading {
  readonly carve?: (typeof CARVE_MODES)[number];
  readonly unit?: (typeof FILE_UNITS)[number];
  readonly joinToleranceMm?: number;
}

/**
 * How a job wants its file read; what the job does not say is absent and left to the reader.
 *
 * @throws {JobError} when a length cannot be read
 */
export function fileReading({ carve, fileUnit, join }: Partial<JobFile>): FileReading {
  return {
    ...(carve === undefined ? {} : { carve }),
    ...(fileUnit === undefined ? {} : { unit: fileUnit }),
    ...(join === undefined ? {} : { joinToleranceMm: joinMm(join) }),
  };
}

function joinMm(text: string): number {
  const value = readLengthMm('join', text);
  if (!(value > 0)) {
    throw new JobError(`join is ${text}; it must be above 0.`);
  }
  return value;
}
