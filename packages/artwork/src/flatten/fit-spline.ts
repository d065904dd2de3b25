import { CubicFlattener } from './cubic-flattener.ts';
import type { CoordSink } from './point-sink.ts';

/**
 * Appends the smooth curve through given points, start point included, within `toleranceMm` and with its own
 * signed area.
 *
 * A spline that has fit points only does not say which curve it means. The curve here is the cubic with
 * continuous curvature whose parameter runs by chord length; its ends follow the given tangents, else end
 * without curvature; a closed one is periodic. Points that repeat the one before are left out.
 *
 * @param tangents directions at start and end, in mm space; `undefined` where none is given
 */
export function flattenFitSpline(
  out: CoordSink,
  fitPoints: readonly number[],
  closed: boolean,
  tangents: readonly [
    start: readonly [number, number] | undefined,
    end: readonly [number, number] | undefined,
  ],
  toleranceMm: number,
): void {
  const points = distinct(fitPoints, closed);
  const n = points.length / 2;
  const [x0, y0] = [points[0], points[1]];
  if (x0 === undefined || y0 === undefined) {
    return;
  }
  out.push(x0, y0);
  const curves = new CubicFlattener();
  const spans = closed && n > 2 ? n : n - 1;
  const chords = Array.from({ length: spans }, (_, i) => {
    const j = (i + 1) % n;
    return Math.hypot(at(points, 2 * j) - at(points, 2 * i), at(points, 2 * j + 1) - at(points, 2 * i + 1));
  });
  const periodic = spans === n && n > 2;
  const dx = slopes(points, 0, chords, periodic, tangents);
  const dy = slopes(points, 1, chords, periodic, tangents);
  for (let i = 0; i < spans; i++) {
    const j = (i + 1) % n;
    const h = at(chords, i) / 3;
    const [ax, ay] = [at(points, 2 * i), at(points, 2 * i + 1)];
    const [bx, by] = [at(points, 2 * j), at(points, 2 * j + 1)];
    curves.cubic(
      out,
      ax,
      ay,
      ax + h * at(dx, i),
      ay + h * at(dy, i),
      bx - h * at(dx, j),
      by - h * at(dy, j),
      bx,
      by,
      toleranceMm,
    );
  }
}

function at(list: ArrayLike<number>, i: number): number {
  return list[i];
}

function distinct(points: readonly number[], closed: boolean): number[] {
  const out: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = [at(points, i), at(points, i + 1)];
    if (out.length === 0 || x !== out.at(-2) || y !== out.at(-1)) {
      out.push(x, y);
    }
  }
  if (closed && out.length > 2 && out[0] === out.at(-2) && out[1] === out.at(-1)) {
    out.length -= 2;
  }
  return out;
}

/** Slopes per chord length at the points, one coordinate, from the continuity of the second derivative. */
function slopes(
  points: readonly number[],
  axis: 0 | 1,
  chords: readonly number[],
  periodic: boolean,
  tangents: readonly [readonly [number, number] | undefined, readonly [number, number] | undefined],
): Float64Array {
  const n = points.length / 2;
  const low = new Float64Array(n);
  const mid = new Float64Array(n);
  const high = new Float64Array(n);
  const right = new Float64Array(n);
  const p = (i: number): number => at(points, 2 * i + axis);
  for (let i = 0; i < n; i++) {
    const before = i > 0 ? i - 1 : periodic ? n - 1 : -1;
    const after = i < n - 1 ? i + 1 : periodic ? 0 : -1;
    if (before >= 0) {
      const h = at(chords, before);
      low[i] = 1 / h;
      mid[i] = at(mid, i) + 2 / h;
      right[i] = at(right, i) + (3 * (p(i) - p(before))) / (h * h);
    }
    if (after >= 0) {
      const h = at(chords, i);
      high[i] = 1 / h;
      mid[i] = at(mid, i) + 2 / h;
      right[i] = at(right, i) + (3 * (p(after) - p(i))) / (h * h);
    }
  }
  if (periodic) {
    return solveCyclic(low, mid, high, right);
  }
  pin(tangents[0], 0, axis, low, mid, high, right);
  pin(tangents[1], n - 1, axis, low, mid, high, right);
  return solveTridiagonal(low, mid, high, right);
}

/** Replaces the row of an end point by its given direction, at speed 1. */
function pin(
  tangent: readonly [number, number] | undefined,
  row: number,
  axis: 0 | 1,
  low: Float64Array,
  mid: Float64Array,
  high: Float64Array,
  right: Float64Array,
): void {
  const length = tangent ? Math.hypot(...tangent) : 0;
  if (tangent && length > 0) {
    low[row] = 0;
    high[row] = 0;
    mid[row] = 1;
    right[row] = tangent[axis] / length;
  }
}

function solveTridiagonal(
  low: Float64Array,
  mid: Float64Array,
  high: Float64Array,
  right: Float64Array,
): Float64Array {
  const n = mid.length;
  const m = Float64Array.from(mid);
  const x = Float64Array.from(right);
  for (let i = 1; i < n; i++) {
    const f = at(low, i) / at(m, i - 1);
    m[i] = at(m, i) - f * at(high, i - 1);
    x[i] = at(x, i) - f * at(x, i - 1);
  }
  for (let i = n - 1; i >= 0; i--) {
    const next = i + 1 < n ? at(high, i) * at(x, i + 1) : 0;
    x[i] = (at(x, i) - next) / at(m, i);
  }
  return x;
}

/**
 * The same with corners `low[0]` (last column of the first row) and `high[n-1]`, by the Sherman-Morrison
 * formula.
 */
function solveCyclic(
  low: Float64Array,
  mid: Float64Array,
  high: Float64Array,
  right: Float64Array,
): Float64Array {
  const n = mid.length;
  const gamma = -at(mid, 0);
  const corner = at(low, 0);
  const other = at(high, n - 1);
  const m = Float64Array.from(mid);
  m[0] = at(mid, 0) - gamma;
  m[n - 1] = at(mid, n - 1) - (corner * other) / gamma;
  const u = new Float64Array(n);
  u[0] = gamma;
  u[n - 1] = other;
  const l = Float64Array.from(low);
  const h = Float64Array.from(high);
  l[0] = 0;
  h[n - 1] = 0;
  const y = solveTridiagonal(l, m, h, right);
  const z = solveTridiagonal(l, m, h, u);
  const f = (at(y, 0) + (corner / gamma) * at(y, n - 1)) / (1 + at(z, 0) + (corner / gamma) * at(z, n - 1));
  return y.map((value, i) => value - f * at(z, i));
}
