import { booleans, resolveRegions } from '@pourproof/geometry';
import {
  type CleanRegion,
  MeasureError,
  type Point,
  packRings,
  parseLengthMm,
  transformRings,
} from '@pourproof/plane';
import { JobError } from '../job/job-error.ts';
import type { Board } from './board.ts';
import type { PlacedBoard } from './place-board.ts';

/** Something on the board that the cut must stay off, in the board's frame, mm. */
export type Obstacle =
  | { readonly kind: 'hole'; readonly atMm: Point; readonly diameterMm: number }
  | { readonly kind: 'groove'; readonly fromMm: Point; readonly toMm: Point; readonly widthMm: number };

/** Sides of the polygon round a hole; it is drawn outside of the circle, so nothing of the hole is let through. */
const HOLE_SIDES = 64;

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

/** Where the cut may go, in the artwork's frame: the board less its margin, holes and grooves. */
export function clearFace(
  board: Board,
  marginMm: number,
  obstacles: readonly Obstacle[],
  placed: PlacedBoard,
): CleanRegion {
  const { widthMm, heightMm } = board;
  const inner =
    2 * marginMm >= Math.min(widthMm, heightMm)
      ? []
      : [
          [
            [marginMm, marginMm],
            [widthMm - marginMm, marginMm],
            [widthMm - marginMm, heightMm - marginMm],
            [marginMm, heightMm - marginMm],
          ] satisfies Point[],
        ];
  const region = (outlines: readonly (readonly Point[])[]): CleanRegion =>
    resolveRegions(
      outlines.map((outline) => ({
        ...transformRings(placed.toArtwork, packRings([outline.flat()])),
        fillRule: 'nonzero' as const,
      })),
    ).region;
  const face = region(inner);
  return obstacles.length === 0 ? face : booleans(face, region(obstacles.flatMap(outlinesOf)), 'subtract');
}

function outlinesOf(obstacle: Obstacle): readonly (readonly Point[])[] {
  if (obstacle.kind === 'hole') {
    return [circle(obstacle.atMm, obstacle.diameterMm / 2)];
  }
  const { fromMm, toMm, widthMm } = obstacle;
  const [dx, dy] = [toMm[0] - fromMm[0], toMm[1] - fromMm[1]];
  const length = Math.hypot(dx, dy);
  const half = widthMm / 2;
  const ends = [circle(fromMm, half), circle(toMm, half)];
  if (length === 0) {
    return ends;
  }
  const [nx, ny] = [(-dy / length) * half, (dx / length) * half];
  return [
    ...ends,
    [
      [fromMm[0] + nx, fromMm[1] + ny],
      [toMm[0] + nx, toMm[1] + ny],
      [toMm[0] - nx, toMm[1] - ny],
      [fromMm[0] - nx, fromMm[1] - ny],
    ],
  ];
}

function circle([x, y]: Point, radius: number): readonly Point[] {
  const outer = radius / Math.cos(Math.PI / HOLE_SIDES);
  return Array.from({ length: HOLE_SIDES }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / HOLE_SIDES;
    return [x + outer * Math.cos(angle), y + outer * Math.sin(angle)];
  });
}
