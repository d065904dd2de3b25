import { MeasureError, type Point, parseLengthMm } from '@pourproof/plane';
import { JobError } from '../job-error.ts';

/** Something on the board that the cut must stay off, in the board's frame, mm. */
export type Obstacle =
  | { readonly kind: 'hole'; readonly atMm: Point; readonly diameterMm: number }
  | { readonly kind: 'groove'; readonly fromMm: Point; readonly toMm: Point; readonly widthMm: number };

/**
 * Reads `hole 20mm,30mm 8mm` (place and diameter) or `groove 0mm,160mm 300mm,160mm 6mm` (from, to and width).
 *
 * @throws {JobError} saying what to type
 */
export function parseObstacle(text: string): Obstacle {
  const [kind, ...words] = text.trim().split(/\s+/u);
  try {
    if (kind === 'hole' && words.length === 2) {
      return { kind, atMm: parsePlace(words[0]), diameterMm: positive(words[1]) };
    }
    if (kind === 'groove' && words.length === 3) {
      return {
        kind,
        fromMm: parsePlace(words[0]),
        toMm: parsePlace(words[1]),
        widthMm: positive(words[2]),
      };
    }
  } catch (error) {
    throw error instanceof MeasureError ? new JobError(`keepClear "${text}": ${error.message}`) : error;
  }
  throw new JobError(
    `keepClear "${text}" cannot be read. Type "hole 20mm,30mm 8mm" (place, diameter) or "groove 0mm,160mm 300mm,160mm 6mm" (from, to, width).`,
  );
}

/**
 * Reads a place such as `20mm,30mm`.
 *
 * @throws {MeasureError} when it is not two lengths
 */
export function parsePlace(text = ''): Point {
  const [x = '', y = '', rest] = text.split(',');
  if (x === '' || y === '' || rest !== undefined) {
    throw new MeasureError(`"${text}" is not a place. Type two lengths, such as 20mm,30mm.`);
  }
  return [parseLengthMm(x), parseLengthMm(y)];
}

function positive(text = ''): number {
  const value = parseLengthMm(text);
  if (!(value > 0)) {
    throw new MeasureError(`"${text}" must be above 0.`);
  }
  return value;
}
