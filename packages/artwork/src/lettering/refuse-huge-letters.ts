import { letteringRefusal } from './lettering-refusals.ts';

/**
 * Largest letter, in mm: no board is as large, so anything beyond is a slip of the unit or the decimal point,
 * and would make endless outlines.
 */
const MAX_LETTER_MM = 20_000;

/**
 * Refuses letters larger than any board: their curves would be divided into millions of pieces.
 *
 * @throws {ArtworkError} `lettering-size`
 */
export function refuseHugeLetters(sizeMm: number): void {
  if (!(sizeMm <= MAX_LETTER_MM)) {
    throw letteringRefusal('lettering-size', { cause: 'huge', sizeMm });
  }
}
