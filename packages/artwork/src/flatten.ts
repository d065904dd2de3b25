/** A growing list of ring coordinates `[x0,y0,x1,y1,…]` in mm. */
export type CoordSink = number[];

/** What takes the points of a ring one by one, in mm: a list, or a store of rings. */
export interface PointSink {
  push(x: number, y: number): unknown;
}

/** Pieces of a curve that is not straight at least. */
const LEAST_PIECES = 2;
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
 * Pieces are as long as the curve's bend at each place allows, and each is checked against its control points.
 *
 * Cost: O(number of segments), which grows with 1/√tolerance.
 *
 * @param toleranceMm largest deviation, > 0
 */
export function flattenCubic(
  out: PointSink,
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
  if (isStraight(x0, y0, x1, y1, x2, y2, x3, y3)) {
    out.push(x3, y3);
    return;
  }
  const c = CURVE;
  c.set(x0, y0, x1, y1, x2, y2, x3, y3);
  // half the tolerance is for the chords, half for moving vertices; more pieces where they are too few to take in all of the area
  let least = LEAST_PIECES;
  for (let height = toleranceMm / 2; height > toleranceMm / 100; height /= 2) {
    if (c.makePolyline(height, toleranceMm / 2, least) === 0) {
      break;
    }
    // a hairpin bends at its turn only: on its way there points have to stand that can be moved aside
    least *= 2;
  }
  appendRest(out, POINTS);
}

/**
 * Appends a quadratic Bézier to `out`; see {@link flattenCubic}, to which it is raised exactly.
 */
export function flattenQuadratic(
  out: PointSink,
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
export function flattenEllipseArc(out: PointSink, arc: EllipseArc, toleranceMm: number): void {
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
  // coordinates that are no numbers make no slices: the reader tells of them
  appendWithArea(
    out,
    points,
    Array.from({ length: n }, () => slice),
    toleranceMm,
  );
}

/** How often a piece is halved at most that turned out too high: at cusps, where the bend tells little. */
const MAX_HALVINGS = 8;

/**
 * Part of the height allowed that pieces are planned for: the bend within a piece varies, and one that is too high is halved. The error of V
 * volumes grows with it, and is to stay below 0.02 % at 8 mm capitals (docs/method/accuracy.md).
 */
const PLANNED = 0.88;

/** Places at which a curve's bend is looked at. */
const LOOKS = 8;

// the polyline in the making, kept between curves so that not every one makes new lists
const POINTS: number[] = [];
const SLICES: number[] = [];
/** How far each point was moved, positive where the area grew. */
const MOVES: number[] = [];

/** One cubic being flattened: its polynomial from the start point, and how many pieces its bend asks for up to each look. */
class Curve {
  private ox = 0;
  private oy = 0;
  private endX = 0;
  private endY = 0;
  // p(t) − p(0) = ((a·t + b)·t + c)·t
  private ax = 0;
  private ay = 0;
  private bx = 0;
  private by = 0;
  private cx = 0;
  private cy = 0;
  private pieces = 1;
  private readonly bendTo = new Float64Array(LOOKS + 1);

  set(x0: number, y0: number, x1: number, y1: number, x2: number, y2: number, x3: number, y3: number): void {
    this.ox = x0;
    this.oy = y0;
    this.endX = x3;
    this.endY = y3;
    this.cx = 3 * (x1 - x0);
    this.cy = 3 * (y1 - y0);
    this.bx = 3 * (x2 - x1) - this.cx;
    this.by = 3 * (y2 - y1) - this.cy;
    this.ax = x3 - x0 - this.bx - this.cx;
    this.ay = y3 - y0 - this.by - this.cy;
  }

  /** Cuts the curve into pieces no higher than a height and moves their ends by up to a limit so that the polyline has its area; returns what it still lacks. */
  makePolyline(heightMm: number, limitMm: number, leastPieces: number): number {
    this.planPieces(heightMm, leastPieces);
    const { pieces } = this;
    POINTS.length = 0;
    SLICES.length = 0;
    POINTS.push(this.ox, this.oy);
    for (let i = 0; i < pieces; i++) {
      this.appendPiece(this.pieceEnd(i), this.pieceEnd(i + 1), i === pieces - 1, heightMm, MAX_HALVINGS);
    }
    return spreadArea(POINTS, SLICES, limitMm);
  }

  /**
   * The number of pieces, by the integral of √(bend/8) over t: a piece of h in t is a slice of height h²·bend/8, where bend is the part of the second
   * derivative across the direction of travel.
   */
  private planPieces(heightMm: number, leastPieces: number): void {
    const { bendTo } = this;
    const size =
      Math.abs(this.cx) +
      Math.abs(this.cy) +
      Math.abs(this.bx) +
      Math.abs(this.by) +
      Math.abs(this.ax) +
      Math.abs(this.ay);
    let before = 0;
    for (let i = 0; i <= LOOKS; i++) {
      const t = i / LOOKS;
      const dx = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
      const dy = (3 * this.ay * t + 2 * this.by) * t + this.cy;
      const ddx = 6 * this.ax * t + 2 * this.bx;
      const ddy = 6 * this.ay * t + 2 * this.by;
      // near a cusp there is no direction of travel, and nothing is lost by looking at a little more than the bend
      const speed = Math.max(Math.sqrt(dx * dx + dy * dy), 0.02 * size);
      const root = Math.sqrt(Math.abs(dx * ddy - dy * ddx) / speed / 8);
      bendTo[i] = i === 0 ? 0 : (bendTo[i - 1] as number) + (before + root) / (2 * LOOKS);
      before = root;
    }
    const all = bendTo[LOOKS] as number;
    this.pieces = Math.min(MAX_PIECES, Math.max(leastPieces, Math.ceil(all / Math.sqrt(PLANNED * heightMm))));
  }

  /** The parameter where piece i starts and the one before ends: an equal share of the bend for each. */
  private pieceEnd(i: number): number {
    const { bendTo, pieces } = this;
    const all = bendTo[LOOKS] as number;
    if (i === 0 || i === pieces || all === 0) {
      return i / pieces;
    }
    const share = (all * i) / pieces;
    let k = 1;
    while ((bendTo[k] as number) < share) {
      k++;
    }
    const from = bendTo[k - 1] as number;
    return (k - 1 + (share - from) / ((bendTo[k] as number) - from)) / LOOKS;
  }

  /** Adds the piece from a to b to the polyline, in halves where the curve may lie further from its chord than `highest`. */
  private appendPiece(a: number, b: number, isLast: boolean, highest: number, halvings: number): void {
    const n = POINTS.length;
    const px = POINTS[n - 2] as number;
    const py = POINTS[n - 1] as number;
    const qx = isLast ? this.endX : this.ox + ((this.ax * b + this.bx) * b + this.cx) * b;
    const qy = isLast ? this.endY : this.oy + ((this.ay * b + this.by) * b + this.cy) * b;
    // the piece's own control points are p, p + h·p′(a)/3, q − h·p′(b)/3, q
    const h = (b - a) / 3;
    const x1 = h * ((3 * this.ax * a + 2 * this.bx) * a + this.cx);
    const y1 = h * ((3 * this.ay * a + 2 * this.by) * a + this.cy);
    const lx = qx - px;
    const ly = qy - py;
    const x2 = lx - h * ((3 * this.ax * b + 2 * this.bx) * b + this.cx);
    const y2 = ly - h * ((3 * this.ay * b + 2 * this.by) * b + this.cy);
    if (halvings > 0 && heightOver(lx, ly, x1, y1, x2, y2) > highest) {
      const middle = (a + b) / 2;
      this.appendPiece(a, middle, false, highest, halvings - 1);
      this.appendPiece(middle, b, isLast, highest, halvings - 1);
      return;
    }
    POINTS.push(qx, qy);
    SLICES.push(cubicSliceArea(x1, y1, x2, y2, lx, ly));
  }
}

const CURVE = new Curve();

/**
 * A bound for how far a cubic from the origin lies from its chord to (lx, ly): ¾ of its farther control point's distance, or 4/9 of it in an S; and where
 * control points lie beyond the chord's ends, how far.
 */
function heightOver(lx: number, ly: number, x1: number, y1: number, x2: number, y2: number): number {
  const length = Math.sqrt(lx * lx + ly * ly);
  if (!(length > 0)) {
    return Math.max(Math.abs(x1), Math.abs(y1), Math.abs(x2), Math.abs(y2));
  }
  const d1 = (lx * y1 - ly * x1) / length;
  const d2 = (lx * y2 - ly * x2) / length;
  const across = Math.max(Math.abs(d1), Math.abs(d2)) * (d1 * d2 > 0 ? 3 / 4 : 4 / 9);
  const a1 = (lx * x1 + ly * y1) / length;
  const a2 = (lx * x2 + ly * y2) / length;
  return across + Math.max(0, -a1, -a2, a1 - length, a2 - length);
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
): boolean {
  const size = Math.abs(x1 - x0) + Math.abs(y1 - y0) + Math.abs(x3 - x0) + Math.abs(y3 - y0);
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
export function cubicSliceArea(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
): number {
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
  out: PointSink,
  points: number[],
  slices: ArrayLike<number>,
  limit: number,
): number {
  const carried = spreadArea(points, slices, limit);
  appendRest(out, points);
  return carried;
}

function appendRest(out: PointSink, points: readonly number[]): void {
  for (let i = 2; i < points.length; i += 2) {
    out.push(points[i] as number, points[i + 1] as number);
  }
}

function spreadArea(points: number[], slices: ArrayLike<number>, limit: number): number {
  const n = slices.length;
  MOVES.length = 0;
  MOVES.push(0);
  let carried = 0;
  for (let i = 1; i < n; i++) {
    MOVES.push(0);
    const before = (slices[i - 1] as number) / (i === 1 ? 1 : 2);
    const after = (slices[i] as number) / (i === n - 1 ? 1 : 2);
    carried = moveForArea(points, i, before + after + carried, limit);
  }
  MOVES.push(0);
  for (let i = n - 2; i > 0 && carried !== 0; i--) {
    carried = moveForArea(points, i, carried, limit);
  }
  return carried;
}

/** Moves point i so that the polyline's area grows by `area`, by `limit` in all at most; returns the area still lacking. */
function moveForArea(points: number[], i: number, area: number, limit: number): number {
  const dx = (points[2 * i + 2] as number) - (points[2 * i - 2] as number);
  const dy = (points[2 * i + 3] as number) - (points[2 * i - 1] as number);
  const length = Math.sqrt(dx * dx + dy * dy);
  const moved = MOVES[i] as number;
  const most = ((limit - moved) * length) / 2;
  const least = ((-limit - moved) * length) / 2;
  const taken = Math.max(least, Math.min(most, area));
  if (taken !== 0) {
    const k = (2 * taken) / length;
    MOVES[i] = moved + k;
    points[2 * i] = (points[2 * i] as number) + k * (dy / length);
    points[2 * i + 1] = (points[2 * i + 1] as number) - k * (dx / length);
  }
  return area - taken;
}
