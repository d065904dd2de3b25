/** An axis-parallel box `[minX, minY, maxX, maxY]` in mm; empty when minX > maxX. */
export type Bounds = readonly [minX: number, minY: number, maxX: number, maxY: number];

/** The empty box. */
export const EMPTY_BOUNDS: Bounds = [
  Number.POSITIVE_INFINITY,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
];

/** The bounding box of points `from` up to but not including `to` of a flat `[x0,y0,x1,y1,…]` array. */
export function boundsOf(coords: ArrayLike<number>, from = 0, to: number = coords.length / 2): Bounds {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const x = coords[2 * i] as number;
    const y = coords[2 * i + 1] as number;
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return [minX, minY, maxX, maxY];
}

/** The smallest box around two boxes. */
export function joinBounds(a: Bounds, b: Bounds): Bounds {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}

/** Whether a box holds no point. */
export function isEmptyBounds(b: Bounds): boolean {
  return b[0] > b[2] || b[1] > b[3];
}
