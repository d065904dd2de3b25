/** A growing list of ring coordinates `[x0,y0,x1,y1,…]` in mm. */
export type CoordSink = number[];

/** Never more pieces than this for one curve; reached only by curves far larger than a board. */
const MAX_PIECES = 65_536;

/**
 * Appends a cubic Bézier to `out` as a polyline that lies within `toleranceMm` of it and has exactly its signed area.
 *
 * Chords of a curve all fall on its inner side, which takes area from every bowl of a letter. Here each inner vertex is
 * moved along the normal of its two neighbours by as much as makes up for the slices between curve and chords, so the
 * polyline weaves about the curve and the area is the curve's, to rounding. The start point is not appended; the end point
 * is, unmoved, so that pieces join. Curves that are straight within rounding give one segment.
 *
 * Cost: O(number of segments), which grows with 1/√tolerance.
 *
 * @param toleranceMm largest deviation, > 0
 */
export function flattenCubic(
  out: CoordSink,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  toleranceMm: number,
): void {
  const n = cubicPieces(x0, y0, x1, y1, x2, y2, x3, y3, toleranceMm);
  if (n === 1) {
    out.push(x3, y3);
    return;
  }
  const points = [x0, y0];
  const slices = new Float64Array(n);
  // piece i has the control points p(a), p(a) + h·p'(a)/3, p(b) − h·p'(b)/3, p(b)
  const h = 1 / n;
  let px = x0;
  let py = y0;
  let dx = h * (x1 - x0);
  let dy = h * (y1 - y0);
  for (let i = 1; i <= n; i++) {
    const t = i / n;
    const u = 1 - t;
    const qx = i === n ? x3 : u * u * u * x0 + 3 * u * t * (u * x1 + t * x2) + t * t * t * x3;
    const qy = i === n ? y3 : u * u * u * y0 + 3 * u * t * (u * y1 + t * y2) + t * t * t * y3;
    const ex = h * (u * u * (x1 - x0) + 2 * u * t * (x2 - x1) + t * t * (x3 - x2));
    const ey = h * (u * u * (y1 - y0) + 2 * u * t * (y2 - y1) + t * t * (y3 - y2));
    slices[i - 1] = cubicSliceArea(dx, dy, qx - ex - px, qy - ey - py, qx - px, qy - py);
    points.push(qx, qy);
    px = qx;
    py = qy;
    dx = ex;
    dy = ey;
  }
  appendWithArea(out, points, slices, toleranceMm / 2);
}

/**
 * Appends a quadratic Bézier to `out`; see {@link flattenCubic}, to which it is raised exactly.
 */
export function flattenQuadratic(
  out: CoordSink,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  toleranceMm: number,
): void {
  flattenCubic(
    out,
    x0,
    y0,
    x0 + (2 / 3) * (x1 - x0),
    y0 + (2 / 3) * (y1 - y0),
    x2 + (2 / 3) * (x1 - x2),
    y2 + (2 / 3) * (y1 - y2),
    x2,
    y2,
    toleranceMm,
  );
}

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
 * Appends an ellipse arc (any affine image of a circle's arc) to `out` with exactly its signed area, within `toleranceMm`.
 * The start point is not appended, the end point is, at its exact place on the ellipse.
 */
export function flattenEllipseArc(out: CoordSink, arc: EllipseArc, toleranceMm: number): void {
  const { cx, cy, ux, uy, vx, vy, start, end } = arc;
  const sweep = end - start;
  // on a circle of the larger half-axis a step φ deviates r(1 − cos(φ/2)); an affine image deviates no more
  const r = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy));
  const step = r > toleranceMm ? 2 * Math.acos(1 - toleranceMm / r) : Math.PI / 2;
  // with two pieces the one inner point would have to make up for both slices, for which the tolerance leaves no room
  const n = Math.min(MAX_PIECES, Math.max(3, Math.ceil(Math.abs(sweep) / Math.min(step, Math.PI / 4))));
  const points: number[] = [];
  for (let i = 0; i <= n; i++) {
    const a = start + (sweep * i) / n;
    const c = Math.cos(a);
    const s = Math.sin(a);
    points.push(cx + c * ux + s * vx, cy + c * uy + s * vy);
  }
  // area between arc and chord: the sector's (u×v)/2 · step, less the triangle's (u×v)/2 · sin(step)
  const piece = sweep / n;
  const slice = ((ux * vy - uy * vx) * (piece - Math.sin(piece))) / 2;
  appendWithArea(out, points, new Float64Array(n).fill(slice), toleranceMm);
}

/** Segments that keep every chord within the tolerance: the bound L²·|p''|/8 with |p''| at most 6·max second difference. */
function cubicPieces(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  tolerance: number,
): number {
  const bend = Math.max(
    Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2),
    Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3),
  );
  const size = Math.abs(x1 - x0) + Math.abs(y1 - y0) + Math.abs(x3 - x0) + Math.abs(y3 - y0);
  if (isStraight(x0, y0, x1, y1, x2, y2, x3, y3, size)) {
    return 1;
  }
  // half the tolerance is for the chord, half for moving vertices
  const n = Math.ceil(Math.sqrt((6 * bend) / (4 * tolerance)));
  // with one inner vertex alone to take in both slices it would have to move 4/3 of their height, more than half the tolerance
  return n === 2 && bend > 2 * tolerance ? 3 : Math.min(MAX_PIECES, Math.max(2, n));
}

// control points on the chord and in order: the curve is the chord itself
function isStraight(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  size: number,
): boolean {
  const dx = x3 - x0;
  const dy = y3 - y0;
  const length = Math.hypot(dx, dy);
  // off the chord by no more than rounding, and between its ends
  const off = 1e-13 * size * length;
  if (Math.abs(dx * (y1 - y0) - dy * (x1 - x0)) > off || Math.abs(dx * (y2 - y0) - dy * (x2 - x0)) > off) {
    return false;
  }
  const len2 = length * length;
  const slack = 1e-12 * len2;
  const t1 = dx * (x1 - x0) + dy * (y1 - y0);
  const t2 = dx * (x2 - x0) + dy * (y2 - y0);
  return t1 >= -slack && t1 <= len2 + slack && t2 >= -slack && t2 <= len2 + slack;
}

/** Signed area between a cubic that starts at the origin and its chord, by Green's theorem on the Bernstein form. */
function cubicSliceArea(x1: number, y1: number, x2: number, y2: number, x3: number, y3: number): number {
  return (3 * (x1 * y2 - x2 * y1) + 3 * (x1 * y3 - x3 * y1) + 6 * (x2 * y3 - x3 * y2)) / 20;
}

/**
 * Moves each inner point along the normal of its two neighbours so that the polyline takes in the slices that chords would
 * cut off, then appends all but the first point. A slice is shared by its two ends; an end slice, whose outer end must stay
 * where the next piece joins, goes to its inner end alone. At a cusp, where a point would have to move further than
 * `limit`, the rest is carried to the next point, and what is left at the end goes backwards, so the sum stays exact.
 *
 * @returns area that no point could take, in mm²; 0 but for hairpins in very few pieces
 */
export function appendWithArea(
  out: CoordSink,
  points: number[],
  slices: Float64Array,
  limit: number,
): number {
  const n = slices.length;
  let carried = 0;
  for (let i = 1; i < n; i++) {
    const before = (slices[i - 1] as number) / (i === 1 ? 1 : 2);
    const after = (slices[i] as number) / (i === n - 1 ? 1 : 2);
    carried = moveForArea(points, i, before + after + carried, limit);
  }
  for (let i = n - 2; i > 0 && carried !== 0; i--) {
    carried = moveForArea(points, i, carried, limit);
  }
  for (let i = 2; i < points.length; i++) {
    out.push(points[i] as number);
  }
  return carried;
}

/** Moves point i so that the polyline's area grows by `area`, at most by `limit`; returns the area still lacking. */
function moveForArea(points: number[], i: number, area: number, limit: number): number {
  const dx = (points[2 * i + 2] as number) - (points[2 * i - 2] as number);
  const dy = (points[2 * i + 3] as number) - (points[2 * i - 1] as number);
  const length = Math.hypot(dx, dy);
  const reach = (limit * length) / 2;
  const taken = Math.max(-reach, Math.min(reach, area));
  if (taken !== 0) {
    const k = (2 * taken) / length;
    points[2 * i] = (points[2 * i] as number) + k * (dy / length);
    points[2 * i + 1] = (points[2 * i + 1] as number) - k * (dx / length);
  }
  return area - taken;
}
