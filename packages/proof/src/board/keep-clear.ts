import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type Board, type Hollow, isHollow, type Obstacle } from '@pourproof/job';
import { type CleanRegion, type Point, packRings, transformRings } from '@pourproof/plane';
import type { PlacedBoard } from './place-board.ts';

/** Sides of the polygon around a hole; it is circumscribed, so that no part of the hole is missed. */
const HOLE_SIDES = 64;

/** Where the cut may go, in the artwork's frame: the board less its margin, holes and grooves. Clamps stand on it and are judged by the bit's way. */
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
  const hollows = obstacles.filter(isHollow);
  return hollows.length === 0 ? face : booleans(face, region(hollows.flatMap(outlinesOf)), 'subtract');
}

function outlinesOf(obstacle: Hollow): readonly (readonly Point[])[] {
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
