import { MeasureError, type Point, parseLengthMm } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import type { ObstacleInput } from './board-input.ts';
import { parsePlace } from './place.ts';

/** Something on the board that the cut must stay off, in the board's frame, mm. */
export type Obstacle =
  | { readonly kind: 'hole'; readonly atMm: Point; readonly diameterMm: number }
  | { readonly kind: 'groove'; readonly fromMm: Point; readonly toMm: Point; readonly widthMm: number };

/**
 * Reads `hole 20mm,30mm 8mm` (place and diameter) or `groove 0mm,160mm 300mm,160mm 6mm` (from, to and width),
 * or a structure.
 *
 * @throws {JobError} saying what to type
 */
export function readObstacle(input: ObstacleInput): Obstacle {
  if (typeof input !== 'string') {
    return input;
  }
  const [kind, ...words] = input.trim().split(/\s+/u);
  const [first = '', second = '', third = ''] = words;
  if (kind === 'hole' && words.length === 2) {
    return { kind, atMm: parsePlace(input, first), diameterMm: size(input, second) };
  }
  if (kind === 'groove' && words.length === 3) {
    return {
      kind,
      fromMm: parsePlace(input, first),
      toMm: parsePlace(input, second),
      widthMm: size(input, third),
    };
  }
  throw new JobError('not-an-obstacle', 'keepClear', { shown: input });
}

function size(text: string, typed: string): number {
  const key = `keepClear "${text}"`;
  try {
    const value = parseLengthMm(typed);
    if (!(value > 0)) {
      throw new JobError('out-of-range', key, { shown: typed, range: 'above 0', why: '', example: '8mm' });
    }
    return value;
  } catch (error) {
    throw error instanceof MeasureError
      ? new JobError('not-a-measure', key, { quantity: 'length', reason: error.message })
      : error;
  }
}
