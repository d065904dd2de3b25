import type { Rings } from '@pourproof/plane';

/** Winding number of rings around a point that lies on no edge; the textbook ray count. */
export function windingAt(rings: Rings, x: number, y: number): number {
  const { coords, ringEnds } = rings;
  let winding = 0;
  let from = 0;
  for (const to of ringEnds) {
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      const y0 = coords[2 * i + 1]!;
      const y1 = coords[2 * j + 1]!;
      if (y0 <= y !== y1 <= y) {
        const at = coords[2 * i]! + ((y - y0) / (y1 - y0)) * (coords[2 * j]! - coords[2 * i]!);
        // left of the point, the edges of a ring with positive area run towards −y
        winding += at < x ? Math.sign(y0 - y1) : 0;
      }
    }
    from = to;
  }
  return winding;
}

/** Distance in mm from a point to the nearest edge. */
export function edgeDistance(rings: Rings, x: number, y: number): number {
  const { coords, ringEnds } = rings;
  let best = Number.POSITIVE_INFINITY;
  let from = 0;
  for (const to of ringEnds) {
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      const ax = coords[2 * i]!;
      const ay = coords[2 * i + 1]!;
      const dx = coords[2 * j]! - ax;
      const dy = coords[2 * j + 1]! - ay;
      const length2 = dx * dx + dy * dy;
      const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2));
      best = Math.min(best, Math.hypot(ax + t * dx - x, ay + t * dy - y));
    }
    from = to;
  }
  return best;
}
