import { MeasureError, type Point, parseLengthMm } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import type { ObstacleInput } from './board-input.ts';
import { parsePlace } from './place.ts';

/**
 * Missing wood that the cut must stay off, in the board's frame, mm: right through the board, or as deep as told from its back, where the cut may go
 * over it.
 */
export type Hollow = { readonly fromBackMm?: number | undefined } & (
  | { readonly kind: 'hole'; readonly atMm: Point; readonly diameterMm: number }
  | { readonly kind: 'groove'; readonly fromMm: Point; readonly toMm: Point; readonly widthMm: number }
);

/** What holds the board down and stands on its face, in the board's frame, mm: the bit must stay off it, also beside the cut. It may reach over the edge. */
export type HeldDown =
  | {
      readonly kind: 'clamp';
      /** Its middle. */
      readonly atMm: Point;
      /** Along the board's x and y axis. */
      readonly sizeMm: readonly [number, number];
    }
  | { readonly kind: 'hold-down'; readonly atMm: Point; readonly diameterMm: number };

/** Something on the board that the cut or the bit must stay off. */
export type Obstacle = Hollow | HeldDown;

/** Whether an obstacle is missing wood, rather than something that stands on the face. */
export function isHollow(obstacle: Obstacle): obstacle is Hollow {
  return obstacle.kind === 'hole' || obstacle.kind === 'groove';
}

/** Whether a hole or groove opens the face of a board of a thickness, mm. */
export function isThrough({ fromBackMm }: Hollow, thicknessMm: number): boolean {
  return fromBackMm === undefined || fromBackMm >= thicknessMm;
}

/**
 * Reads `hole 20mm,30mm 8mm` (place and diameter), `groove 0mm,160mm 300mm,160mm 6mm` (from, to and width), either with `back:12mm` at its end
 * where it is only so deep and in the back, `clamp 20mm,90mm 40x25mm` (middle and
 * size), `hold-down 20mm,90mm 30mm` (middle and diameter), or a structure.
 *
 * @throws {JobError} saying what to type
 */
export function readObstacle(input: ObstacleInput): Obstacle {
  if (typeof input !== 'string') {
    return input;
  }
  const [kind, ...all] = input.trim().split(/\s+/u);
  const back = kind === 'hole' || kind === 'groove' ? BACK.exec(all.at(-1) ?? '') : null;
  const words = back === null ? all : all.slice(0, -1);
  const deep = back === null ? {} : { fromBackMm: size(input, back[1] ?? '') };
  const [first = '', second = '', third = ''] = words;
  if ((kind === 'hole' || kind === 'hold-down') && words.length === 2) {
    return { kind, atMm: parsePlace(input, first), diameterMm: size(input, second), ...deep };
  }
  const sides = /^([\d./-]+)x([\d./-]+)([a-z"]+)$/iu.exec(second);
  if (kind === 'clamp' && words.length === 2 && sides !== null) {
    const [, across = '', down = '', unit = ''] = sides;
    return {
      kind,
      atMm: parsePlace(input, first),
      sizeMm: [size(input, across + unit), size(input, down + unit)],
    };
  }
  if (kind === 'groove' && words.length === 3) {
    return {
      kind,
      fromMm: parsePlace(input, first),
      toMm: parsePlace(input, second),
      widthMm: size(input, third),
      ...deep,
    };
  }
  throw new JobError('not-an-obstacle', 'keepClear', { shown: input });
}

/** The depth of a hole or groove from the back of the board. */
const BACK = /^back:(.+)$/iu;

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
