import type { Segment } from './path.ts';

/** A point of a segment with its first and second derivative by the parameter t in 0…1. */
export interface SegmentPoint {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly ddx: number;
  readonly ddy: number;
}

/**
 * Below this fraction of the segment's size the derivative counts as 0: what is left of it is rounding of
 * control points in one place.
 */
const MIN_SPEED_REL = 1e-9;

/** Steps in t by which the direction is sought where the derivative is 0. */
const DIRECTION_STEPS: readonly number[] = [1e-4, 1e-2, 0.1, 0.5, 1];

/**
 * A step has moved the point by more than rounding from this fraction of the segment's size on. Near a double
 * zero of the derivative the first step moves it by 1e-8 of the size, near a triple one by 1e-12, and then
 * the next step is taken.
 */
const MIN_MOVE_REL = 1e-11;

/** The point of a segment at parameter `t` with its derivatives, in the segment's unit. */
export function segmentAt(s: Segment, t: number): SegmentPoint {
  if (s.kind === 'line') {
    const dx = s.x - s.x0;
    const dy = s.y - s.y0;
    return { x: s.x0 + t * dx, y: s.y0 + t * dy, dx, dy, ddx: 0, ddy: 0 };
  }
  if (s.kind === 'arc') {
    const { cx, cy, ux, uy, vx, vy, start, end } = s.arc;
    const turn = end - start;
    const c = Math.cos(start + t * turn);
    const n = Math.sin(start + t * turn);
    const x = c * ux + n * vx;
    const y = c * uy + n * vy;
    return {
      x: cx + x,
      y: cy + y,
      dx: turn * (c * vx - n * ux),
      dy: turn * (c * vy - n * uy),
      ddx: -turn * turn * x,
      ddy: -turn * turn * y,
    };
  }
  const u = 1 - t;
  const ax = s.x1 - s.x0;
  const ay = s.y1 - s.y0;
  const bx = s.x2 - s.x1;
  const by = s.y2 - s.y1;
  const cx = s.x - s.x2;
  const cy = s.y - s.y2;
  return {
    x: u * u * u * s.x0 + 3 * u * t * (u * s.x1 + t * s.x2) + t * t * t * s.x,
    y: u * u * u * s.y0 + 3 * u * t * (u * s.y1 + t * s.y2) + t * t * t * s.y,
    dx: 3 * (u * u * ax + 2 * u * t * bx + t * t * cx),
    dy: 3 * (u * u * ay + 2 * u * t * by + t * t * cy),
    ddx: 6 * (u * (bx - ax) + t * (cx - bx)),
    ddy: 6 * (u * (by - ay) + t * (cy - by)),
  };
}

/**
 * Unit direction of travel at `t`; where the derivative vanishes (control points in one place, a cusp) the
 * direction in which the curve leaves that point, or at its end arrives. `undefined` for a segment that is a
 * single point.
 */
export function directionAt(s: Segment, t: number): readonly [number, number] | undefined {
  const p = segmentAt(s, t);
  const size = s.kind === 'line' ? 0 : segmentSize(s);
  const speed = Math.hypot(p.dx, p.dy);
  if (speed > MIN_SPEED_REL * size && speed > 0) {
    return [p.dx / speed, p.dy / speed];
  }
  // try ever larger steps until the curve has moved by more than rounding
  for (const step of DIRECTION_STEPS) {
    const from = t + step <= 1 ? p : segmentAt(s, Math.max(0, t - step));
    const to = t + step <= 1 ? segmentAt(s, t + step) : p;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length > MIN_MOVE_REL * size) {
      return [(to.x - from.x) / length, (to.y - from.y) / length];
    }
  }
  return undefined;
}

/** An upper bound on the segment's extent, against which rounding is judged. */
function segmentSize(s: Segment): number {
  if (s.kind === 'cubic') {
    return (
      Math.abs(s.x1 - s.x0) +
      Math.abs(s.y1 - s.y0) +
      Math.abs(s.x2 - s.x0) +
      Math.abs(s.y2 - s.y0) +
      Math.abs(s.x - s.x0) +
      Math.abs(s.y - s.y0)
    );
  }
  return s.kind === 'arc' ? Math.hypot(s.arc.ux, s.arc.uy, s.arc.vx, s.arc.vy) : 0;
}

/** Whether a segment is a single point. */
export function isPointSegment(s: Segment): boolean {
  if (s.kind === 'line') {
    return s.x === s.x0 && s.y === s.y0;
  }
  return s.kind === 'cubic' && segmentSize(s) === 0;
}
