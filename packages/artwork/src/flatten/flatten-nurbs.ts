import { appendRest, spreadArea } from './area-true-polyline.ts';
import { MAX_SEGMENTS } from './max-segments.ts';
import type { CoordSink } from './point-sink.ts';
import { ON_CHORD_REL } from './rounding.ts';
import { markUntold } from './told-chords.ts';

/** A flat rational B-spline in mm. */
export interface Nurbs {
  readonly degree: number;
  /** Non-decreasing; as many as points + degree + 1. */
  readonly knots: readonly number[];
  /** `[x0,y0,x1,y1,…]`. */
  readonly points: readonly number[];
  /** One per point, above 0; empty when all are equal. */
  readonly weights: readonly number[];
}

/** Higher degrees are damage, not drawings. */
const MAX_DEGREE = 25;

/**
 * Spans meet within this fraction of their size (or of 1 mm, if smaller), unless a knot is repeated so often
 * that the curve jumps.
 */
const JOIN_REL = 1e-9;

/**
 * Largest ratio of a piece's weights with which sixteen Gauss points integrate its area to a dozen digits.
 */
const MAX_WEIGHT_RATIO = 1.5;

/** Most halvings of one span: 2^12 pieces. */
const MAX_HALVINGS = 12;

/** What is wrong with a spline, in words, or `''` when {@link flattenNurbs} can take it. */
export function nurbsFault(spline: Nurbs): string {
  const { degree, knots, weights } = spline;
  const count = spline.points.length / 2;
  if (!(Number.isInteger(degree) && degree >= 1 && degree <= MAX_DEGREE)) {
    return `a degree that is not from 1 to ${MAX_DEGREE}`;
  }
  if (count < degree + 1) {
    return `${count} control points for degree ${degree}`;
  }
  if (knots.length !== count + degree + 1) {
    return `${knots.length} knots where ${count + degree + 1} are needed`;
  }
  if (knots.some((t, i) => !(i === 0 || t >= knots[i - 1]))) {
    return 'knots that go back';
  }
  if (!(knots[count] > knots[degree])) {
    return 'knots that span nothing';
  }
  if (weights.length > 0 && (weights.length !== count || weights.some((w) => !(w > 0)))) {
    return 'weights that are missing or not above 0';
  }
  return '';
}

/**
 * Appends a rational B-spline over its valid knots (from knot number `degree` to the one that ends the last
 * full span, which for unclamped splines is not the whole of the knots) as a polyline within `toleranceMm`
 * and with its signed area to rounding. The start point is appended too.
 *
 * Each span becomes a rational Bézier by its polar form and is halved until its control points lie within a
 * quarter of the tolerance of its chord, which bounds the curve since it lies within their hull and leaves
 * room to move the points for area. Areas of the slices come from Gauss-Legendre integration of Green's
 * integrand (exact for polynomial pieces up to degree 8, to a dozen digits for others).
 *
 * @see Piegl and Tiller, The NURBS Book, on polar forms and span extraction (from memory)
 */
export function flattenNurbs(out: CoordSink, spline: Nurbs, toleranceMm: number): void {
  const { degree, knots } = spline;
  const last = spline.points.length / 2 - 1;
  for (let k = degree; k <= last; k++) {
    if (knots[k + 1] <= knots[k]) {
      continue;
    }
    const bezier = spanBezier(spline, k);
    const x = bezier[0] / bezier[2];
    const y = bezier[1] / bezier[2];
    const apart = Math.hypot(x - (out.at(-2) ?? Number.NaN), y - (out.at(-1) ?? Number.NaN));
    if (k === degree || !(apart <= JOIN_REL * (1 + extent(bezier)))) {
      out.push(x, y);
    }
    flattenRationalBezier(out, bezier, toleranceMm);
  }
}

/** Homogeneous control points `[xw,yw,w,…]` of the span from knot k to knot k + 1. */
function spanBezier(spline: Nurbs, k: number): number[] {
  const { degree: p, knots, points, weights } = spline;
  const a = knots[k];
  const b = knots[k + 1];
  const bezier: number[] = [];
  const d = new Float64Array(3 * (p + 1));
  for (let j = 0; j <= p; j++) {
    for (let i = 0; i <= p; i++) {
      const w = weights.length > 0 ? weights[k - p + i] : 1;
      d[3 * i] = w * points[2 * (k - p + i)];
      d[3 * i + 1] = w * points[2 * (k - p + i) + 1];
      d[3 * i + 2] = w;
    }
    // polar form with p − j arguments a and j arguments b
    for (let r = 1; r <= p; r++) {
      const u = r <= p - j ? a : b;
      for (let i = p; i >= r; i--) {
        const low = knots[k - p + i];
        const high = knots[k + 1 + i - r];
        const t = (u - low) / (high - low);
        for (let c = 0; c < 3; c++) {
          d[3 * i + c] = (1 - t) * d[3 * (i - 1) + c] + t * d[3 * i + c];
        }
      }
    }
    bezier.push(d[3 * p], d[3 * p + 1], d[3 * p + 2]);
  }
  return bezier;
}

/**
 * Appends one rational Bézier without its start point. A hairpin in few pieces has no room to make up for its
 * slices: it is then cut finer.
 */
function flattenRationalBezier(out: CoordSink, bezier: readonly number[], toleranceMm: number): void {
  for (let cut = toleranceMm / 4; ; cut /= 4) {
    const { points, missing } = throughPieces(cutBezier(bezier, cut), toleranceMm);
    if (missing === 0 || cut < toleranceMm / 4096) {
      appendRest(out, points);
      return;
    }
  }
}

/**
 * The chords of pieces of a curve, with its area but for what is missing. Pieces are halved until the outline
 * tells each chord from a straight edge.
 */
function throughPieces(
  pieces: readonly (readonly number[])[],
  toleranceMm: number,
): { points: number[]; missing: number } {
  const moves: number[] = [];
  const marks: number[] = [];
  for (let now = pieces, round = 0; ; round++) {
    const points = now.length > 0 ? [now[0][0] / now[0][2], now[0][1] / now[0][2]] : [];
    for (const piece of now) {
      points.push(...endOf(piece));
    }
    const missing = spreadArea(points, now.map(sliceOf), toleranceMm / 2, moves);
    if (
      missing !== 0 ||
      round === MAX_HALVINGS ||
      now.length >= MAX_SEGMENTS ||
      markUntold(points, now.map(offChord), moves, toleranceMm, marks) === 0
    ) {
      return { points, missing };
    }
    now = now.flatMap((piece, i) => (marks[i] === 1 ? halves(piece) : [piece]));
  }
}

function endOf(piece: readonly number[]): [number, number] {
  const n = piece.length;
  return [piece[n - 3] / piece[n - 1], piece[n - 2] / piece[n - 1]];
}

/** Pieces of a rational Bézier that leave their chords by no more than `deviation`; one where it is straight. */
function cutBezier(bezier: readonly number[], deviation: number): readonly (readonly number[])[] {
  if (isStraight(bezier)) {
    return [bezier];
  }
  const pieces: (readonly number[])[] = [];
  // depth-first, left half first, so that the pieces come in the order of the curve
  const stack: { piece: readonly number[]; depth: number }[] = [{ piece: bezier, depth: 0 }];
  for (let top = stack.pop(); top !== undefined; top = stack.pop()) {
    const { piece, depth } = top;
    const fine = depth > 0 && offChord(piece) <= deviation && weightRatio(piece) <= MAX_WEIGHT_RATIO;
    if (fine || depth === MAX_HALVINGS) {
      pieces.push(piece);
    } else {
      const [left, right] = halves(piece);
      stack.push({ piece: right, depth: depth + 1 }, { piece: left, depth: depth + 1 });
    }
  }
  return pieces;
}

function isStraight(bezier: readonly number[]): boolean {
  return offChord(bezier) <= ON_CHORD_REL * extent(bezier);
}

function sliceOf(piece: readonly number[]): number {
  return isStraight(piece) ? 0 : sliceArea(piece);
}

function halves(bezier: readonly number[]): [number[], number[]] {
  const work = Float64Array.from(bezier);
  const n = bezier.length / 3;
  const left: number[] = [];
  const right: number[] = new Array<number>(bezier.length);
  for (let r = 0; r < n; r++) {
    left.push(work[0], work[1], work[2]);
    const end = 3 * (n - 1 - r);
    for (let c = 0; c < 3; c++) {
      right[end + c] = work[end + c];
    }
    for (let i = 0; i < end; i++) {
      work[i] = (work[i] + work[i + 3]) / 2;
    }
  }
  return [left, right];
}

/** Largest distance of an inner control point from the chord between the ends. */
function offChord(bezier: readonly number[]): number {
  const n = bezier.length;
  const x0 = bezier[0] / bezier[2];
  const y0 = bezier[1] / bezier[2];
  const dx = bezier[n - 3] / bezier[n - 1] - x0;
  const dy = bezier[n - 2] / bezier[n - 1] - y0;
  const len2 = dx * dx + dy * dy;
  let off = 0;
  for (let i = 3; i < n - 3; i += 3) {
    const w = bezier[i + 2];
    const x = bezier[i] / w - x0;
    const y = bezier[i + 1] / w - y0;
    const t = len2 > 0 ? Math.max(0, Math.min(1, (x * dx + y * dy) / len2)) : 0;
    off = Math.max(off, Math.hypot(x - t * dx, y - t * dy));
  }
  return off;
}

function weightRatio(bezier: readonly number[]): number {
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (let i = 2; i < bezier.length; i += 3) {
    low = Math.min(low, bezier[i]);
    high = Math.max(high, bezier[i]);
  }
  return high / low;
}

function extent(bezier: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < bezier.length; i += 3) {
    const w = bezier[i + 2];
    sum += Math.abs(bezier[i] / w) + Math.abs(bezier[i + 1] / w);
  }
  return sum;
}

/**
 * Signed area between a piece and its chord: half the integral of x·y′ − y·x′, which for x = X/W is (X·Y′ −
 * Y·X′)/W².
 */
function sliceArea(bezier: readonly number[]): number {
  const n = bezier.length / 3;
  const x0 = bezier[0] / bezier[2];
  const y0 = bezier[1] / bezier[2];
  let sum = 0;
  const work = new Float64Array(3 * n);
  // eight points lose up to 1e-7 of the area of a quotient of high degree
  const isPolynomial = n - 1 <= 8 && weightRatio(bezier) === 1;
  const [gaussNodes, gaussWeights] = isPolynomial ? GAUSS_8 : GAUSS_16;
  for (let g = 0; g < gaussNodes.length; g++) {
    const t = gaussNodes[g];
    for (let i = 0; i < n; i++) {
      const w = bezier[3 * i + 2];
      work[3 * i] = bezier[3 * i] - x0 * w;
      work[3 * i + 1] = bezier[3 * i + 1] - y0 * w;
      work[3 * i + 2] = w;
    }
    for (let end = 3 * (n - 2); end >= 3; end -= 3) {
      for (let i = 0; i < end + 3; i++) {
        work[i] = (1 - t) * work[i] + t * work[i + 3];
      }
    }
    // two points are left: their difference times the degree is the derivative
    const [ax, ay, aw, bx, by, bw] = work as unknown as [number, number, number, number, number, number];
    const w = (1 - t) * aw + t * bw;
    sum += (gaussWeights[g] * (n - 1) * (ax * by - ay * bx)) / (w * w);
  }
  return sum / 2;
}

const GAUSS_8 = gaussLegendre(8);
const GAUSS_16 = gaussLegendre(16);

/** Nodes and weights on [0, 1], by Newton's method on the Legendre polynomial. */
function gaussLegendre(n: number): [nodes: number[], weights: number[]] {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 20; round++) {
      let p0 = 1;
      let p1 = x;
      for (let k = 2; k <= n; k++) {
        [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k];
      }
      slope = (n * (p0 - x * p1)) / (1 - x * x);
      x -= p1 / slope;
    }
    nodes.push((1 + x) / 2);
    weights.push(1 / ((1 - x * x) * slope * slope));
  }
  return [nodes, weights];
}
