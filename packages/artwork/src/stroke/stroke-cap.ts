import { flattenEllipseArc } from '../flatten/flatten-ellipse-arc.ts';

/**
 * Appends the corners or the arc of a cap at the end of a stroke, between its right and its left edge (both
 * not included).
 *
 * @param direction unit direction out of the stroke
 */
export function appendCap(
  ring: number[],
  x: number,
  y: number,
  [tx, ty]: readonly [number, number],
  half: number,
  cap: 'butt' | 'round' | 'square',
  tolerance: number,
): void {
  if (cap === 'square') {
    ring.push(x + half * (ty + tx), y + half * (ty - tx), x + half * (tx - ty), y + half * (ty + tx));
  } else if (cap === 'round') {
    appendCircleArc(ring, x, y, half, ty, -tx, Math.PI, tolerance);
  }
}

/**
 * Appends an arc about (x,y) that starts in direction (ux,uy) and turns by `turn`, without its first and its
 * last point.
 */
export function appendCircleArc(
  ring: number[],
  x: number,
  y: number,
  radius: number,
  ux: number,
  uy: number,
  turn: number,
  tolerance: number,
): void {
  const u = { ux: radius * ux, uy: radius * uy, vx: -radius * uy, vy: radius * ux };
  flattenEllipseArc(ring, { cx: x, cy: y, ...u, start: 0, end: turn }, tolerance);
  ring.length -= 2;
}

/** What a subpath of no length paints: a dot, an upright square, or nothing. */
export function lonePointRing(
  x: number,
  y: number,
  half: number,
  cap: 'butt' | 'round' | 'square',
  tolerance: number,
): number[] | undefined {
  if (cap === 'butt') {
    return undefined;
  }
  if (cap === 'square') {
    return [x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half];
  }
  const ring: number[] = [];
  const circle = { cx: x, cy: y, ux: half, uy: 0, vx: 0, vy: half };
  flattenEllipseArc(ring, { ...circle, start: 0, end: Math.PI }, tolerance);
  flattenEllipseArc(ring, { ...circle, start: Math.PI, end: 2 * Math.PI }, tolerance);
  return ring;
}
