import type { Point } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import { readMeasure } from '../values/measure-input.ts';
import type { ReadingInput } from './board-input.ts';
import { parsePlace } from './place.ts';

/** A reading of the board's height (or thickness on a flat bed) at a place, both in mm. */
export interface HeightReading {
  readonly atMm: Point;
  readonly heightMm: number;
}

/**
 * A height of the face at a place, from `20mm,30mm 19.8mm` or a structure.
 *
 * @throws {JobError} when it cannot be read
 */
export function readReading(input: ReadingInput): HeightReading {
  return typeof input === 'string' ? parseReading(input) : input;
}

function parseReading(text: string): HeightReading {
  const [place = '', height, rest] = text.trim().split(/\s+/u);
  if (height === undefined || rest !== undefined) {
    throw new JobError('not-a-reading', 'reading', { shown: text });
  }
  return { atMm: parsePlace('reading', place), heightMm: readMeasure('reading', height, 'length') };
}
