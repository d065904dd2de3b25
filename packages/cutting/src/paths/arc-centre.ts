/** Centre `[x, y]` of the circle through a and b with a bulge between them; the bulge must not be 0. */
export function arcCentre(ax: number, ay: number, bx: number, by: number, bulge: number): [number, number] {
  const up = (1 - bulge * bulge) / (4 * bulge);
  return [(ax + bx) / 2 - (by - ay) * up, (ay + by) / 2 + (bx - ax) * up];
}
