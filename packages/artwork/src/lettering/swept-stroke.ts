import { applyTransform, determinant, type Point, type Transform } from '@pourproof/plane';
import { type EllipseArc, flattenEllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import type { CoordSink } from '../flatten/point-sink.ts';
import type { StickStroke } from './stick-alphabet.ts';

/** A circle's arc: centre, radius, start angle and signed sweep in radians (from +x towards +y). */
export interface CircleArc {
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  readonly start: number;
  readonly sweep: number;
}

/**
 * Rings whose non-zero union is what a round bit of `widthMm` sweeps along a stroke: one ring for each
 * straight piece, arc or dot, all of positive area, with round ends, so that pieces join roundly. Curves are
 * flattened without bias in area within `toleranceMm`.
 *
 * @param toMm a similarity, which may mirror, from the stroke's grid to mm
 */
export function sweptStroke(
  stroke: StickStroke,
  toMm: Transform,
  widthMm: number,
  toleranceMm: number,
): number[][] {
  const half = widthMm / 2;
  const side = determinant(toMm) < 0 ? -1 : 1;
  let from = applyTransform(toMm, [stroke.x, stroke.y]);
  if (stroke.steps.length === 0) {
    return [disc(from, half, toleranceMm)];
  }
  return stroke.steps.flatMap((step) => {
    const to = applyTransform(toMm, [step.x, step.y]);
    const turn = step.turn * side;
    const rings =
      turn === 0
        ? [slot(from, to, half, toleranceMm)]
        : sweptArc(arcBetween(from, to, turn), half, toleranceMm);
    from = to;
    return rings;
  });
}

/** The arc from one point to another that turns by `turn` radians, less than a full turn either way. */
export function arcBetween(from: Point, to: Point, turn: number): CircleArc {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  // the centre lies on the chord's bisector, on the side to which the arc turns
  const k = 0.5 / Math.tan(turn / 2);
  const cx = (from[0] + to[0]) / 2 - k * dy;
  const cy = (from[1] + to[1]) / 2 + k * dx;
  return {
    cx,
    cy,
    r: Math.hypot(from[0] - cx, from[1] - cy),
    start: Math.atan2(from[1] - cy, from[0] - cx),
    sweep: turn,
  };
}

/** Most pieces of an arc that the bit covers, for tolerances near rounding. */
const MAX_SLOTS = 4096;

function sweptArc(arc: CircleArc, half: number, tolerance: number): number[][] {
  const start = arc.sweep > 0 ? arc.start : arc.start + arc.sweep;
  const end = start + Math.abs(arc.sweep);
  const at = (angle: number): Point => [arc.cx + arc.r * Math.cos(angle), arc.cy + arc.r * Math.sin(angle)];
  if (arc.r <= half) {
    // the bit covers the arc's centre: no inner edge, so the arc is swept by short straight pieces
    const step = 2 * Math.acos(Math.max(0, 1 - tolerance / arc.r));
    const n = Math.min(MAX_SLOTS, Math.max(2, Math.ceil((end - start) / step)));
    const angle = (i: number): number => start + ((end - start) * i) / n;
    return Array.from({ length: n }, (_, i) => slot(at(angle(i)), at(angle(i + 1)), half, tolerance));
  }
  const ring: CoordSink = [];
  const outer = arc.r + half;
  ring.push(arc.cx + outer * Math.cos(start), arc.cy + outer * Math.sin(start));
  flattenEllipseArc(ring, circle([arc.cx, arc.cy], outer, start, end), tolerance);
  flattenEllipseArc(ring, circle(at(end), half, end, end + Math.PI), tolerance);
  flattenEllipseArc(ring, circle([arc.cx, arc.cy], arc.r - half, end, start), tolerance);
  flattenEllipseArc(ring, circle(at(start), half, start + Math.PI, start + 2 * Math.PI), tolerance);
  return [closed(ring)];
}

function slot(from: Point, to: Point, half: number, tolerance: number): number[] {
  const along = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const side = along - Math.PI / 2;
  const ring: CoordSink = [from[0] + half * Math.cos(side), from[1] + half * Math.sin(side)];
  ring.push(to[0] + half * Math.cos(side), to[1] + half * Math.sin(side));
  flattenEllipseArc(ring, circle(to, half, side, side + Math.PI), tolerance);
  ring.push(from[0] - half * Math.cos(side), from[1] - half * Math.sin(side));
  flattenEllipseArc(ring, circle(from, half, side + Math.PI, side + 2 * Math.PI), tolerance);
  return closed(ring);
}

function disc(centre: Point, r: number, tolerance: number): number[] {
  const ring: CoordSink = [];
  flattenEllipseArc(ring, circle(centre, r, 0, 2 * Math.PI), tolerance);
  return ring;
}

function circle([cx, cy]: Point, r: number, start: number, end: number): EllipseArc {
  return { cx, cy, ux: r, uy: 0, vx: 0, vy: r, start, end };
}

// the last cap comes back to the first point
function closed(ring: number[]): number[] {
  return ring.slice(0, -2);
}
