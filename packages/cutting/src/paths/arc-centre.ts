/**
 * Centre `[x, y]` of the circle on which the arc from a to b with this bulge lies; the bulge must not be 0.
 */
export function arcCentre(ax: number, ay: number, bx: number, by: number, bulge: number): [number, number] {
  const up = (1 - bulge * bulge) / (4 * bulge);
  return [(ax + bx) / 2 - (by - ay) * up, (ay + by) / 2 + (bx - ax) * up];
}
