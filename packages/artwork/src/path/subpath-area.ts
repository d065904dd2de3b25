import { cubicSliceArea } from '../flatten/cubic-slice-area.ts';
import type { Segment, Subpath } from './path.ts';

/**
 * The exact signed area of a subpath, closed by a straight line, in its own unit squared: Green's theorem on
 * its lines, Béziers and arcs.
 */
export function subpathArea({ x0, y0, segments }: Subpath): number {
  let sum = 0;
  segments.forEach((s) => {
    sum += ((s.x0 - x0) * (s.y - y0) - (s.x - x0) * (s.y0 - y0)) / 2 + sliceArea(s);
  });
  return sum;
}

/** Signed area between a segment and its chord. */
function sliceArea(s: Segment): number {
  if (s.kind === 'line') {
    return 0;
  }
  if (s.kind === 'cubic') {
    return cubicSliceArea(s.x1 - s.x0, s.y1 - s.y0, s.x2 - s.x0, s.y2 - s.y0, s.x - s.x0, s.y - s.y0);
  }
  const { ux, uy, vx, vy, start, end } = s.arc;
  const turn = end - start;
  return ((ux * vy - uy * vx) * (turn - Math.sin(turn))) / 2;
}
