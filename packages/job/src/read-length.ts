import { MeasureError, parseLengthMm } from '@pourproof/plane';
import { JobError } from './job-error.ts';

/**
 * The length of a key of the job in mm.
 *
 * @throws {JobError} naming the key, when the text is not a length with its unit
 */
export function readLengthMm(key: string, text: string): number {
  try {
    return parseLengthMm(text);
  } catch (error) {
    throw error instanceof MeasureError ? new JobError(`${key}: ${error.message}`) : error;
  }
}
