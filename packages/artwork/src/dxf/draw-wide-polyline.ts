import { appendWithArea } from '../flatten/area-true-polyline.ts';
import { MAX_SEGMENTS } from '../flatten/max-segments.ts';
import { appendArc, appendPoint, STRAIGHT_BULGE } from './append-bulge.ts';
import type { PolylineVertex } from './draw-polyline.ts';
import type { PlaneMap } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';

/** One straight or round piece of a wide polyline, in drawing units. */
interface Band {
  readonly from: PolylineVertex;
  readonly to: PolylineVertex;
  /** Directions at the ends, unit vectors. */
  readonly startDirection: readonly [number, number];
  readonly endDirection: readonly [number, number];
}

/**
 * Draws a polyline with widths as the area it covers: each piece a band between its two widths with square
 * ends, and a miter at each vertex up to {@link MITER_LIMIT} widths, a bevel beyond.
 */
export function drawWidePolyline(
  vertices: readonly PolylineVertex[],
  closed: boolean,
  plane: PlaneMap,
  pen: DxfPen,
): void {
  const bands: Band[] = [];
  const parts: number[][] = [];
  const count = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < count; i++) {
    const from = vertices[i] as PolylineVertex;
    const to = vertices[(i + 1) % vertices.length] as PolylineVertex;
    const band = bandBetween(from, to);
    if (band) {
      bands.push(band);
      parts.push(bandOutline(band, plane, pen.toleranceMm));
    }
  }
  const joints = closed ? bands.length : bands.length - 1;
  for (let i = 0; i < joints; i++) {
    const wedge = jointWedge(bands[i] as Band, bands[(i + 1) % bands.length] as Band, plane);
    if (wedge) {
      parts.push(wedge);
    }
  }
  if (bands.length === 0) {
    pen.notice('zero-size');
  } else {
    pen.union(parts);
  }
}

/**
 * Sine of the turn below which two bands go straight on: the wedge would be thinner than 1e-9 of the width.
 */
const STRAIGHT_TURN = 1e-9;

/** A miter reaches at most this many half-widths from its vertex (our choice; drawing programs differ). */
const MITER_LIMIT = 4;

/** `undefined` when both ends are the same point. */
function bandBetween(from: PolylineVertex, to: PolylineVertex): Band | undefined {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) {
    return undefined;
  }
  // an arc leaves its chord by half its angle, and meets it again by as much on the other side
  const half = 2 * Math.atan(from.bulge);
  return {
    from,
    to,
    startDirection: turned(dx / length, dy / length, -half),
    endDirection: turned(dx / length, dy / length, half),
  };
}

function turned(x: number, y: number, angle: number): [number, number] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [c * x - s * y, s * x + c * y];
}

/** The outline of one band in mm. */
function bandOutline(band: Band, plane: PlaneMap, toleranceMm: number): number[] {
  const out: number[] = [];
  appendSide(out, band, 0.5, plane, toleranceMm);
  const other: number[] = [];
  appendSide(other, band, -0.5, plane, toleranceMm);
  for (let i = other.length - 2; i >= 0; i -= 2) {
    out.push(other[i] as number, other[i + 1] as number);
  }
  return out;
}

/** One long side of a band, from its start to its end, `side` widths to the left of the middle line. */
function appendSide(out: number[], band: Band, side: number, plane: PlaneMap, toleranceMm: number): void {
  const { from, to } = band;
  const [sx, sy] = band.startDirection;
  const [ex, ey] = band.endDirection;
  appendPoint(out, plane, from.x - side * from.startWidth * sy, from.y + side * from.startWidth * sx);
  const b = from.bulge;
  if (Math.abs(b) >= STRAIGHT_BULGE) {
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    // signed radius: positive when the centre is to the left
    const radius = (chord * (1 + b * b)) / (4 * b);
    const cx = from.x - radius * sy;
    const cy = from.y + radius * sx;
    const start = Math.atan2(from.y - cy, from.x - cx);
    const sweep = 4 * Math.atan(b);
    const sideRadius = (width: number): number => Math.abs(radius) - Math.sign(b) * side * width;
    appendSpiral(
      out,
      plane,
      cx,
      cy,
      sideRadius(from.startWidth),
      sideRadius(from.endWidth),
      start,
      sweep,
      toleranceMm,
    );
    out.length -= 2;
  }
  appendPoint(out, plane, to.x - side * from.endWidth * ey, to.y + side * from.endWidth * ex);
}

/** An arc whose radius grows evenly from one value to another, with its own signed area. */
function appendSpiral(
  out: number[],
  plane: PlaneMap,
  cx: number,
  cy: number,
  startRadius: number,
  endRadius: number,
  start: number,
  sweep: number,
  toleranceMm: number,
): void {
  if (startRadius === endRadius) {
    appendArc(out, plane, cx, cy, startRadius, start, start + sweep, toleranceMm);
    return;
  }
  const stretch = Math.max(Math.hypot(plane.xx, plane.xy), Math.hypot(plane.yx, plane.yy));
  const reach = Math.max(Math.abs(startRadius), Math.abs(endRadius)) * stretch;
  // a spiral bends no more than a circle of its largest radius by more than its growth; half the circle's
  // step is ample
  const step = Math.min(Math.PI / 8, Math.sqrt((2 * toleranceMm) / Math.max(reach, toleranceMm)));
  const n = Math.min(MAX_SEGMENTS, Math.max(2, Math.ceil(Math.abs(sweep) / step)));
  const turn = sweep / n;
  const points: number[] = [];
  const slices = new Float64Array(n);
  const determinant = plane.xx * plane.yy - plane.xy * plane.yx;
  let before = startRadius;
  for (let i = 0; i <= n; i++) {
    const r = startRadius + ((endRadius - startRadius) * i) / n;
    appendPoint(points, plane, cx + r * Math.cos(start + turn * i), cy + r * Math.sin(start + turn * i));
    if (i > 0) {
      // half the integral of r² over the turn, less the triangle
      const sector = (turn * (before * before + before * r + r * r)) / 6;
      slices[i - 1] = determinant * (sector - (before * r * Math.sin(turn)) / 2);
    }
    before = r;
  }
  appendWithArea(out, points, slices, toleranceMm / 2);
}

/** The wedge on the outer side of the turn between two bands in mm; `undefined` where they go straight on. */
function jointWedge(before: Band, after: Band, plane: PlaneMap): number[] | undefined {
  const { to: vertex } = before;
  if (vertex.x !== after.from.x || vertex.y !== after.from.y) {
    return undefined;
  }
  const [ax, ay] = before.endDirection;
  const [bx, by] = after.startDirection;
  const cross = ax * by - ay * bx;
  const dot = ax * bx + ay * by;
  if (Math.abs(cross) < STRAIGHT_TURN && dot > 0) {
    return undefined;
  }
  // a left turn opens on the right side and the other way round
  const side = cross > 0 ? -1 : 1;
  const p = side * (before.from.endWidth / 2);
  const q = side * (after.from.startWidth / 2);
  const corner: number[] = [];
  appendPoint(corner, plane, vertex.x, vertex.y);
  appendPoint(corner, plane, vertex.x - p * ay, vertex.y + p * ax);
  // the sides meet where vertex + p·n(a) + s·a = vertex + q·n(b) + t·b
  const s = cross === 0 ? Number.POSITIVE_INFINITY : (q - p * dot) / -cross;
  const reach = Math.hypot(p, s);
  if (s >= 0 && reach <= MITER_LIMIT * Math.abs(p)) {
    appendPoint(corner, plane, vertex.x - p * ay + s * ax, vertex.y + p * ax + s * ay);
  }
  appendPoint(corner, plane, vertex.x - q * by, vertex.y + q * bx);
  return corner;
}
