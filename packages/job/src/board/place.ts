import type { Point } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import { readMeasure } from '../values/measure-input.ts';
import type { PlaceInput } from './board-input.ts';

/**
 * A place on the board in mm, from `150mm,90mm` or a structure.
 *
 * @throws {JobError} when it is not two lengths
 */
export function readPlace(input: PlaceInput): Point {
  return typeof input === 'string' ? parsePlace('place', input) : input.atMm;
}

/**
 * Reads a place such as `20mm,30mm`.
 *
 * @param key what the place is part of, for messages
 * @throws {JobError} when it is not two lengths
 */
export function parsePlace(key: string, text: string): Point {
  const [x = '', y = '', rest] = text.split(',').map((part) => part.trim());
  // a comma parts the two lengths: 12,5mm,30mm and 12,5mm are not guessed at
  const isHalf = /^[+-]?\d+$/u.test(x) && Number(x) !== 0;
  if (x === '' || y === '' || rest !== undefined || isHalf) {
    throw new JobError('not-a-place', key, { shown: text });
  }
  return [readMeasure(key, x, 'length'), readMeasure(key, y, 'length')];
}
