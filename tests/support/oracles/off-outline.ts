import { BoxIndex, type Rings, ringStart } from '@pourproof/plane';

/** How far the farthest of some points, `[x, y, …]`, lies from the outline of rings, mm. */
export function offOutline(points: ArrayLike<number>, rings: Rings): number {
  const { coords } = rings;
  const from: number[] = [];
  const to: number[] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const start = ringStart(rings, k);
    for (let i = start; i < rings.ringEnds[k]!; i++) {
      from.push(i);
      to.push(i + 1 === rings.ringEnds[k] ? start : i + 1);
    }
  }
  const boxes = from.flatMap((i, e) => {
    const [ax, ay, bx, by] = [
      coords[2 * i]!,
      coords[2 * i + 1]!,
      coords[2 * to[e]!]!,
      coords[2 * to[e]! + 1]!,
    ];
    return [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)];
  });
  const index = new BoxIndex(Float64Array.from(boxes));
  let farthest = 0;
  for (let p = 0; p < points.length; p += 2) {
    const [x, y] = [points[p]!, points[p + 1]!];
    let nearest = Infinity;
    index.visitNear(
      x,
      y,
      (distance) => distance < nearest,
      (e) => {
        const [i, j] = [from[e]!, to[e]!];
        const [ax, ay] = [coords[2 * i]!, coords[2 * i + 1]!];
        const [dx, dy] = [coords[2 * j]! - ax, coords[2 * j + 1]! - ay];
        const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
        nearest = Math.min(nearest, Math.hypot(x - ax - t * dx, y - ay - t * dy));
      },
    );
    farthest = Math.max(farthest, nearest);
  }
  return farthest;
}
