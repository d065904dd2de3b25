import { resolveRegions } from '@pourproof/arrangement';
import { type HeldDown, type Hollow, isHollow, type Obstacle } from '@pourproof/job';
import { type Point, packRings, type Rings, transformRings } from '@pourproof/plane';
import type { PlacedBoard } from './place-board.ts';

/** Sides of the polygon around a hole; it is circumscribed, so that no part of the hole is missed. */
const HOLE_SIDES = 64;
/** Sides of the polygon that shows a round hold-down. */
const ROUND_SIDES = 32;

/** The outline of an obstacle in the artwork's frame. */
export function obstacleOutline(obstacle: Obstacle, { toArtwork }: Pick<PlacedBoard, 'toArtwork'>): Rings {
  if (!isHollow(obstacle)) {
    return transformRings(toArtwork, clampOutline(obstacle));
  }
  const outlines = hollowOutlines(obstacle).map((outline) => ({
    ...transformRings(toArtwork, packRings([outline.flat()])),
    fillRule: 'nonzero' as const,
  }));
  return resolveRegions(outlines).region;
}

/** The outlines that cover a hole or groove together, in the board's frame. */
export function hollowOutlines(obstacle: Hollow): readonly (readonly Point[])[] {
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

/** The outline of a clamp in the frame of the board. */
export function clampOutline(clamp: HeldDown): Rings {
  const [x, y] = clamp.atMm;
  const corners =
    clamp.kind === 'clamp'
      ? [-1, 1, 1, -1].map(
          (sx, k): Point => [x + (sx * clamp.sizeMm[0]) / 2, y + ((k < 2 ? -1 : 1) * clamp.sizeMm[1]) / 2],
        )
      : Array.from({ length: ROUND_SIDES }, (_, k): Point => {
          const angle = (2 * Math.PI * k) / ROUND_SIDES;
          return [x + (clamp.diameterMm / 2) * Math.cos(angle), y + (clamp.diameterMm / 2) * Math.sin(angle)];
        });
  return packRings([corners.flat()]);
}
