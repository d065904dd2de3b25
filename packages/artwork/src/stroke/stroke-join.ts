import { appendCircleArc } from './stroke-cap.ts';
import type { StrokeEdges, StrokeStyle } from './stroke-outline.ts';

/**
 * Turns smaller than this, in radians, are smooth: the join would be thinner than 1e-7 of the stroke's width.
 */
const SMOOTH_TURN = 1e-7;

/**
 * Appends the join at a corner to the outer edge and the corner itself to the inner edge. Both edges end at
 * the incoming segment's corners; the outgoing segment appends its own.
 *
 * @param into unit direction of the incoming segment's end
 * @param out unit direction of the outgoing segment's start
 */
export function appendJoin(
  edges: StrokeEdges,
  x: number,
  y: number,
  into: readonly [number, number],
  out: readonly [number, number],
  style: StrokeStyle,
  tolerance: number,
): void {
  const cross = into[0] * out[1] - into[1] * out[0];
  const dot = into[0] * out[0] + into[1] * out[1];
  const turn = Math.atan2(cross, dot);
  if (Math.abs(turn) < SMOOTH_TURN) {
    return;
  }
  const half = style.width / 2;
  const side = turn > 0 ? -1 : 1;
  const [outer, inner] = turn > 0 ? [edges.right, edges.left] : [edges.left, edges.right];
  inner.push(x, y);
  // outward normals on the outer side
  const ax = -side * into[1];
  const ay = side * into[0];
  if (style.join === 'round') {
    appendCircleArc(outer, x, y, half, ax, ay, turn, tolerance);
  } else if (style.join !== 'bevel') {
    appendMiter(outer, x, y, [ax, ay], [-side * out[1], side * out[0]], into, out, turn, style);
  }
}

/**
 * The tip of a miter, or where it is too long: nothing (a bevel), or for `miter-clip` its two corners at the
 * limit.
 */
function appendMiter(
  outer: number[],
  x: number,
  y: number,
  a: readonly [number, number],
  b: readonly [number, number],
  into: readonly [number, number],
  out: readonly [number, number],
  turn: number,
  style: StrokeStyle,
): void {
  const half = style.width / 2;
  const cosHalf = Math.cos(turn / 2);
  if (cosHalf * style.miterLimit >= 1) {
    const k = half / (2 * cosHalf * cosHalf);
    outer.push(x + k * (a[0] + b[0]), y + k * (a[1] + b[1]));
  } else if (style.join === 'miter-clip') {
    // along each edge from the bevel, half·cos(turn/2) from the corner, to the clip line at half·limit
    const sinHalf = Math.abs(Math.sin(turn / 2));
    const run = (half * (style.miterLimit - cosHalf)) / sinHalf;
    outer.push(
      x + half * a[0] + run * into[0],
      y + half * a[1] + run * into[1],
      x + half * b[0] - run * out[0],
      y + half * b[1] - run * out[1],
    );
  }
}
