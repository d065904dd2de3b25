/**
 * Signed area between a cubic Bézier that starts at the origin and its chord, by Green's theorem on the
 * Bernstein form.
 */
export function cubicSliceArea(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
): number {
  return (3 * (x1 * y2 - x2 * y1) + 3 * (x1 * y3 - x3 * y1) + 6 * (x2 * y3 - x3 * y2)) / 20;
}
