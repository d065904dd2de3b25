import type { Point } from '@pourproof/plane';

/** Points of a straight wall that stand off it by less, mm, are none: half of what coordinates are written to. */
const STRAIGHT_MM = 5e-7;

/** A ring without points that lie on the straight line between their neighbours. */
export function withoutStraightPoints(ring: Float64Array): Float64Array {
  const points: Point[] = [];
  const n = ring.length / 2;
  const at = (i: number): Point => [ring[2 * i], ring[2 * i + 1]];
  for (let i = 0; i < n; i++) {
    const last = points[points.length - 1];
    if (last === undefined || !isBetween(at(i), last, at((i + 1) % n))) {
      points.push(at(i));
    }
  }
  while (
    points.length > 3 &&
    isBetween(points[0] as Point, points[points.length - 1] as Point, points[1] as Point)
  ) {
    points.shift();
  }
  return points.length < 3 ? ring : Float64Array.from(points.flat());
}

function isBetween([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): boolean {
  const [dx, dy] = [bx - ax, by - ay];
  const length = Math.hypot(dx, dy);
  const along = (x - ax) * dx + (y - ay) * dy;
  return (
    (x === ax && y === ay) ||
    (length > 0 &&
      Math.abs((x - ax) * dy - (y - ay) * dx) <= STRAIGHT_MM * length &&
      along >= 0 &&
      along <= length * length)
  );
}
