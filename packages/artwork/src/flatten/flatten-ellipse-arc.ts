import { appendRest, spreadArea } from './area-true-polyline.ts';
import { MAX_SEGMENTS } from './max-segments.ts';
import type { PointSink } from './point-sink.ts';

/** An ellipse arc by its centre: point(θ) = centre + cosθ·u + sinθ·v with half-axis vectors u and v. */
export interface EllipseArc {
  readonly cx: number;
  readonly cy: number;
  readonly ux: number;
  readonly uy: number;
  readonly vx: number;
  readonly vy: number;
  /** Start and end angle in radians; the arc runs from start to end, either way, at most one turn. */
  readonly start: number;
  readonly end: number;
}

/**
 * With two segments the one inner point would have to make up for both slices, for which the tolerance leaves
 * no room.
 */
const MIN_SEGMENTS = 3;

/**
 * Appends an ellipse arc (any affine image of a circular arc) to `out` with exactly its signed area, within
 * `toleranceMm`. The start point is not appended, the end point is, at its exact place on the ellipse.
 */
export function flattenEllipseArc(out: PointSink, arc: EllipseArc, toleranceMm: number): void {
  const { ux, uy, vx, vy, start, end } = arc;
  const sweep = end - start;
  // on a circle of the larger half-axis a step φ deviates r(1 − cos(φ/2)); an affine image deviates no more
  const r = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy));
  const step = r > toleranceMm ? 2 * Math.acos(1 - toleranceMm / r) : Math.PI / 2;
  const wanted = Math.ceil(Math.abs(sweep) / Math.min(step, Math.PI / 4));
  if (Number.isNaN(wanted)) {
    // a radius beyond all numbers, or an angle that is none: a point that readers find and report
    out.push(Number.NaN, Number.NaN);
    return;
  }
  let n = Math.min(MAX_SEGMENTS, Math.max(MIN_SEGMENTS, wanted));
  let points = pointsOf(arc, n);
  // where a few segments just keep the tolerance, their inner points may lack the room for the slices of the ends
  while (
    spreadArea(points, slicesOf(arc, n), toleranceMm, []) !== 0 &&
    n < Math.min(MAX_SEGMENTS, wanted + MORE_SEGMENTS)
  ) {
    n++;
    points = pointsOf(arc, n);
  }
  appendRest(out, points);
}

/** One more is enough on circles. */
const MORE_SEGMENTS = 4;

function pointsOf({ cx, cy, ux, uy, vx, vy, start, end }: EllipseArc, n: number): number[] {
  const points: number[] = [];
  for (let i = 0; i <= n; i++) {
    const a = start + ((end - start) * i) / n;
    const c = Math.cos(a);
    const s = Math.sin(a);
    points.push(cx + c * ux + s * vx, cy + c * uy + s * vy);
  }
  return points;
}

/** Area between arc and chord: the sector's (u×v)/2 · step, less the triangle's (u×v)/2 · sin(step). */
function slicesOf({ ux, uy, vx, vy, start, end }: EllipseArc, n: number): number[] {
  const angle = (end - start) / n;
  const slice = ((ux * vy - uy * vx) * (angle - Math.sin(angle))) / 2;
  return Array.from({ length: n }, () => slice);
}
