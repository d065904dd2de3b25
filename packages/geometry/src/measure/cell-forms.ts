import { parabolaLength } from './parabola-length.ts';

/**
 * Closed forms on the cells beside a stretch of one axis edge, in mm: a segment cell has R ds of area over
 * its contacts and R²/2 ds of distance to the boundary, a vertex cell R²/2 dθ and R³/3 dθ. Everything that
 * sums up cells takes them from here.
 *
 * `along` is the length of the contacts on both segments together, a and b are the clearances at both ends.
 * Where the bisector bends, h is the distance from the vertex to the line, or half the distance between both
 * vertices, and s and t are the positions of both ends along it, over h.
 */

/** Area beside a bisector of two edges, mm²: trapezoids. */
export function areaBesideLines(along: number, a: number, b: number): number {
  return (along * (a + b)) / 2;
}

/** Integral of the distance to the boundary beside a bisector of two edges, mm³. */
export function distanceBesideLines(along: number, a: number, b: number): number {
  return (along * (a * a + a * b + b * b)) / 6;
}

/** Integral of the distance to the boundary beside a parabola arc, between an edge and a vertex, mm³. */
export function distanceBesideParabola(h: number, s: number, t: number): number {
  return (h * h * h * 5 * (t * quintic(t * t) - s * quintic(s * s))) / 24;
}

/** Integral of the distance to the boundary beside a bisector of two vertices, mm³. */
export function distanceBesideVertices(h: number, s: number, t: number): number {
  return (h * h * h * (parabolaLength(t) - parabolaLength(s))) / 3;
}

/**
 * Angle that the contacts turn by beside a bisector of two vertices, both together, or beside a parabola arc,
 * radians.
 */
export function turnBesideVertex(s: number, t: number): number {
  return 2 * (Math.atan(t) - Math.atan(s));
}

/** Angle between two unit directions, 0 … π. */
export function angleBetween(ax: number, ay: number, bx: number, by: number): number {
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}

/** The integral of (1 + t²)² from 0 to t, over t, by the square of t. */
function quintic(t2: number): number {
  return 1 + t2 * (2 / 3 + t2 / 5);
}
