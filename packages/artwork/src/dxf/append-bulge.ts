import { flattenEllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import type { CoordSink } from '../flatten/point-sink.ts';
import type { PlaneMap } from './dxf-map.ts';

/** Where a point of a flat figure lands, appended to `out` in mm. */
export function appendPoint(out: CoordSink, map: PlaneMap, x: number, y: number): void {
  out.push(map.ox + map.xx * x + map.yx * y, map.oy + map.xy * x + map.yy * y);
}

/**
 * Bulges below this are straight: the arc leaves its chord by less than 5e-9 of its length, and its radius
 * would cost more digits than that.
 */
export const STRAIGHT_BULGE = 1e-8;

/**
 * Appends the way from one vertex of a polyline to the next, in mm, without its start. A bulge is the tangent
 * of a quarter of the arc's angle, positive when the arc turns counter-clockwise from start to end (DXF
 * reference, LWPOLYLINE code 42); 0 is a line.
 */
export function appendBulge(
  out: CoordSink,
  map: PlaneMap,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  bulge: number,
  toleranceMm: number,
): void {
  const dx = x1 - x0;
  const dy = y1 - y0;
  if (Math.abs(bulge) < STRAIGHT_BULGE || (dx === 0 && dy === 0)) {
    appendPoint(out, map, x1, y1);
    return;
  }
  // the centre lies on the chord's perpendicular bisector, at (1 − b²)/(4b) chord lengths to the left
  const k = (1 - bulge * bulge) / (4 * bulge);
  const cx = (x0 + x1) / 2 - k * dy;
  const cy = (y0 + y1) / 2 + k * dx;
  const radius = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const start = Math.atan2(y0 - cy, x0 - cx);
  appendArc(out, map, cx, cy, radius, start, start + 4 * Math.atan(bulge), toleranceMm);
  if (!Number.isFinite(radius)) {
    // no arc, which the pen finds by the point that stands for it
    return;
  }
  // the vertex as it is in the file, free of the rounding of sines
  out.length -= 2;
  appendPoint(out, map, x1, y1);
}

/**
 * Appends a circle's arc as it looks through a map, in mm, without its start; angles in radians,
 * counter-clockwise in the figure.
 */
export function appendArc(
  out: CoordSink,
  map: PlaneMap,
  cx: number,
  cy: number,
  radius: number,
  start: number,
  end: number,
  toleranceMm: number,
): void {
  flattenEllipseArc(
    out,
    {
      cx: map.ox + map.xx * cx + map.yx * cy,
      cy: map.oy + map.xy * cx + map.yy * cy,
      ux: map.xx * radius,
      uy: map.xy * radius,
      vx: map.yx * radius,
      vy: map.yy * radius,
      start,
      end,
    },
    toleranceMm,
  );
}
