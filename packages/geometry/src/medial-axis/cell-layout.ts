import type { Boundary } from './boundary.ts';

/**
 * What is kept for each instance of a site, side by side, because a large boundary's collapse jumps about in memory: the disc in which its cell
 * closes (clearance infinity where it does not), the clearance by which closings are ordered, the disc from which the bisector with the next
 * instance grows, and whether the instance waits in the queue.
 */
export const CELL_STRIDE = 8;
export const X = 0;
export const Y = 1;
export const R = 2;
export const DUE = 3;
export const GROWS_X = 4;
export const GROWS_Y = 5;
export const GROWS_R = 6;
export const IS_QUEUED = 7;

/** What is kept for each edge of the boundary: start, unit direction, length, and the index of the point at its end. */
export const EDGE_STRIDE = 6;
export const TX = 2;
export const TY = 3;
export const LENGTH = 4;
export const END = 5;

/** The edges of a boundary as {@link EDGE_STRIDE} says. */
export function edgesSideBySide(boundary: Boundary): Float64Array {
  const { count, x, y, tx, ty, length, next } = boundary;
  const edges = new Float64Array(EDGE_STRIDE * count);
  for (let i = 0; i < count; i++) {
    const at = EDGE_STRIDE * i;
    edges[at + X] = x[i];
    edges[at + Y] = y[i];
    edges[at + TX] = tx[i];
    edges[at + TY] = ty[i];
    edges[at + LENGTH] = length[i];
    edges[at + END] = next[i];
  }
  return edges;
}
