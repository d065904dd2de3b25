import { appendRest, spreadArea } from './area-true-polyline.ts';
import { cubicSliceArea } from './cubic-slice-area.ts';
import { MAX_SEGMENTS } from './max-segments.ts';
import type { PointSink } from './point-sink.ts';
import { BEYOND_END_REL, ON_CHORD_REL } from './rounding.ts';
import { markUntold } from './told-chords.ts';

/** Minimum segments for a curve that is not straight. */
const MIN_SEGMENTS = 2;

/**
 * Most halvings of a segment that turned out too high, or that nothing tells from a straight edge; needed at
 * cusps, where curvature at a few samples tells little. Beyond the first few they end where the whole curve
 * has as many segments as any curve may have.
 */
const MAX_HALVINGS = 40;
const FREE_HALVINGS = 8;

/**
 * Fraction of the allowed height that segments are planned for: curvature varies within a segment, and one
 * that is too high is halved. The error of V-cut volumes grows with it, and is to stay below 0.02 % at 8 mm
 * capitals (docs/method/accuracy.md).
 */
const PLANNED_FRACTION = 0.88;

/** Number of intervals in t at whose ends curvature is sampled. */
const SAMPLES = 8;

/**
 * Near a cusp there is no direction of travel: speeds below this fraction of the polynomial's size count as
 * that, at the cost of a few segments.
 */
const MIN_SPEED_REL = 0.02;

/**
 * A tolerance is tried at finer and finer heights down to this fraction of it, until the polyline takes in
 * all of the curve's area.
 */
const MIN_HEIGHT_REL = 1 / 100;

/**
 * Turns Béziers into polylines that lie within a tolerance of them and have exactly their signed area. It
 * keeps its lists between curves, so one of it serves all the curves of a path.
 *
 * Chords of a curve all fall on its inner side, which takes area from every bowl of a letter. Here each inner
 * vertex is moved along the normal of its two neighbours by as much as makes up for the slices between curve
 * and chords, so that the polyline weaves about the curve and the area is the curve's, to rounding. The start
 * point is not appended; the end point is, unmoved, so that curves join. Curves that are straight but for
 * rounding give one segment. Segments are as long as the curvature at each place allows, and each is checked
 * against its control points.
 *
 * Cost: O(number of segments), which grows with 1/√tolerance.
 */
export class CubicFlattener {
  // the curve: p(t) − p(0) = ((a·t + b)·t + c)·t
  #ox = 0;
  #oy = 0;
  #endX = 0;
  #endY = 0;
  #ax = 0;
  #ay = 0;
  #bx = 0;
  #by = 0;
  #cx = 0;
  #cy = 0;
  /** Number of planned segments. */
  #segments = 1;
  /** Integral of √(height per h²) from 0 to each sample. */
  readonly #integral = new Float64Array(SAMPLES + 1);
  // the polyline being made, the slice between each of its segments and the curve, and how far each point was
  // moved
  readonly #points: number[] = [];
  readonly #slices: number[] = [];
  readonly #moves: number[] = [];
  // the parameter at each point, how far the curve may leave each segment, and which are to be halved
  readonly #params: number[] = [];
  readonly #heights: number[] = [];
  readonly #marks: number[] = [];

  /** Appends a cubic Bézier to `out`; the tolerance, in mm, is above 0. */
  cubic(
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
    this.#set(x0, y0, x1, y1, x2, y2, x3, y3);
    // half the tolerance is for the chords, half for moving vertices
    let min = MIN_SEGMENTS;
    for (let height = toleranceMm / 2; height > toleranceMm * MIN_HEIGHT_REL; height /= 2) {
      if (this.#makePolyline(height, toleranceMm / 2, min) === 0 && this.#halveUntold(toleranceMm) === 0) {
        break;
      }
      // a hairpin has curvature at its turn only: on its straight parts points are needed that can be moved
      // aside
      min *= 2;
    }
    appendRest(out, this.#points);
  }

  /** Appends a quadratic Bézier to `out`, raised exactly to a cubic. */
  quadratic(
    out: PointSink,
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    x2: number,
    y2: number,
    toleranceMm: number,
  ): void {
    this.cubic(
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

  #set(x0: number, y0: number, x1: number, y1: number, x2: number, y2: number, x3: number, y3: number): void {
    this.#ox = x0;
    this.#oy = y0;
    this.#endX = x3;
    this.#endY = y3;
    this.#cx = 3 * (x1 - x0);
    this.#cy = 3 * (y1 - y0);
    this.#bx = 3 * (x2 - x1) - this.#cx;
    this.#by = 3 * (y2 - y1) - this.#cy;
    this.#ax = x3 - x0 - this.#bx - this.#cx;
    this.#ay = y3 - y0 - this.#by - this.#cy;
  }

  /**
   * Cuts the curve into segments no higher than `heightMm` and moves their ends by up to `limitMm` so that
   * the polyline has its area; returns the area that is still missing.
   */
  #makePolyline(heightMm: number, limitMm: number, minSegments: number): number {
    this.#planSegments(heightMm, minSegments);
    const n = this.#segments;
    this.#begin();
    for (let i = 0; i < n; i++) {
      this.#append(this.#segmentStart(i), this.#segmentStart(i + 1), heightMm, MAX_HALVINGS);
    }
    return spreadArea(this.#points, this.#slices, limitMm, this.#moves);
  }

  /** Halves segments until the outline tells each of them from a straight edge; returns the area that is missing. */
  #halveUntold(toleranceMm: number): number {
    const marks = this.#marks;
    for (let round = 0; round < MAX_HALVINGS && this.#slices.length < MAX_SEGMENTS; round++) {
      if (markUntold(this.#points, this.#heights, this.#moves, toleranceMm, marks) === 0) {
        break;
      }
      const params = this.#params.slice();
      this.#begin();
      for (let i = 0; i + 1 < params.length; i++) {
        this.#append(params[i], params[i + 1], marks[i] === 1 ? 0 : Infinity, 1);
      }
      const missing = spreadArea(this.#points, this.#slices, toleranceMm / 2, this.#moves);
      if (missing !== 0) {
        return missing;
      }
    }
    return 0;
  }

  /** Empties the polyline but for its start. */
  #begin(): void {
    this.#points.length = 0;
    this.#slices.length = 0;
    this.#heights.length = 0;
    this.#params.length = 0;
    this.#points.push(this.#ox, this.#oy);
    this.#params.push(0);
  }

  /**
   * The number of segments, by the integral of √(k/8) over t: a segment of length h in t is a slice of height
   * h²·k/8, where k is the component of the second derivative normal to the direction of travel.
   */
  #planSegments(heightMm: number, minSegments: number): void {
    const integral = this.#integral;
    const size =
      Math.abs(this.#cx) +
      Math.abs(this.#cy) +
      Math.abs(this.#bx) +
      Math.abs(this.#by) +
      Math.abs(this.#ax) +
      Math.abs(this.#ay);
    let before = 0;
    for (let i = 0; i <= SAMPLES; i++) {
      const t = i / SAMPLES;
      const dx = (3 * this.#ax * t + 2 * this.#bx) * t + this.#cx;
      const dy = (3 * this.#ay * t + 2 * this.#by) * t + this.#cy;
      const ddx = 6 * this.#ax * t + 2 * this.#bx;
      const ddy = 6 * this.#ay * t + 2 * this.#by;
      const speed = Math.max(Math.sqrt(dx * dx + dy * dy), MIN_SPEED_REL * size);
      const root = Math.sqrt(Math.abs(dx * ddy - dy * ddx) / speed / 8);
      integral[i] = i === 0 ? 0 : integral[i - 1] + (before + root) / (2 * SAMPLES);
      before = root;
    }
    const wanted = Math.ceil(integral[SAMPLES] / Math.sqrt(PLANNED_FRACTION * heightMm));
    this.#segments = Math.min(MAX_SEGMENTS, Math.max(minSegments, wanted));
  }

  /**
   * The parameter where segment i starts and the one before ends: each gets an equal share of the integral.
   */
  #segmentStart(i: number): number {
    const integral = this.#integral;
    const n = this.#segments;
    const all = integral[SAMPLES];
    if (i === 0 || i === n || all === 0) {
      return i / n;
    }
    const share = (all * i) / n;
    let k = 1;
    while (integral[k] < share) {
      k++;
    }
    const from = integral[k - 1];
    return (k - 1 + (share - from) / (integral[k] - from)) / SAMPLES;
  }

  /**
   * Adds the segment from a to b to the polyline, in halves where the curve may lie further from its chord
   * than `maxHeight`.
   */
  #append(a: number, b: number, maxHeight: number, halvings: number): void {
    const points = this.#points;
    const n = points.length;
    const px = points[n - 2];
    const py = points[n - 1];
    const qx = b === 1 ? this.#endX : this.#ox + ((this.#ax * b + this.#bx) * b + this.#cx) * b;
    const qy = b === 1 ? this.#endY : this.#oy + ((this.#ay * b + this.#by) * b + this.#cy) * b;
    // the control points of this part are p, p + h·p′(a)/3, q − h·p′(b)/3, q
    const h = (b - a) / 3;
    const x1 = h * ((3 * this.#ax * a + 2 * this.#bx) * a + this.#cx);
    const y1 = h * ((3 * this.#ay * a + 2 * this.#by) * a + this.#cy);
    const lx = qx - px;
    const ly = qy - py;
    const x2 = lx - h * ((3 * this.#ax * b + 2 * this.#bx) * b + this.#cx);
    const y2 = ly - h * ((3 * this.#ay * b + 2 * this.#by) * b + this.#cy);
    const height = maxHeightOf(lx, ly, x1, y1, x2, y2);
    if (height > maxHeight && halvings > (n < 2 * MAX_SEGMENTS ? 0 : MAX_HALVINGS - FREE_HALVINGS)) {
      const middle = (a + b) / 2;
      this.#append(a, middle, maxHeight, halvings - 1);
      this.#append(middle, b, maxHeight, halvings - 1);
      return;
    }
    points.push(qx, qy);
    this.#params.push(b);
    this.#heights.push(height);
    this.#slices.push(cubicSliceArea(x1, y1, x2, y2, lx, ly));
  }
}

/**
 * An upper bound for how far a cubic from the origin lies from its chord to (lx, ly): ¾ of its farther
 * control point's distance, or 4/9 of it in an S; plus, where control points lie beyond the chord's ends, by
 * how much.
 */
function maxHeightOf(lx: number, ly: number, x1: number, y1: number, x2: number, y2: number): number {
  const length = Math.sqrt(lx * lx + ly * ly);
  if (!(length > 0)) {
    return Math.max(Math.hypot(x1, y1), Math.hypot(x2, y2));
  }
  const d1 = (lx * y1 - ly * x1) / length;
  const d2 = (lx * y2 - ly * x2) / length;
  const across = Math.max(Math.abs(d1), Math.abs(d2)) * (d1 * d2 > 0 ? 3 / 4 : 4 / 9);
  const a1 = (lx * x1 + ly * y1) / length;
  const a2 = (lx * x2 + ly * y2) / length;
  return across + Math.max(0, -a1, -a2, a1 - length, a2 - length);
}

/**
 * Whether the control points lie on the chord and between its ends, so that the curve is the chord itself.
 */
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
  const off = ON_CHORD_REL * size * length;
  if (Math.abs(dx * (y1 - y0) - dy * (x1 - x0)) > off || Math.abs(dx * (y2 - y0) - dy * (x2 - x0)) > off) {
    return false;
  }
  const len2 = length * length;
  const slack = BEYOND_END_REL * len2;
  const t1 = dx * (x1 - x0) + dy * (y1 - y0);
  const t2 = dx * (x2 - x0) + dy * (y2 - y0);
  return t1 >= -slack && t1 <= len2 + slack && t2 >= -slack && t2 <= len2 + slack;
}
