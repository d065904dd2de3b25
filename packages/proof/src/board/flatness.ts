import type { HeightReading } from '@pourproof/job';
import type { Point } from '@pourproof/plane';

/** A surface fitted to readings. */
export interface FittedSurface {
  /** Height in mm at a place of the board. */
  readonly heightAt: (at: Point) => number;
  /**
   * A plane, its twist, and a bowl whose two curvatures (cup and bow) are separate where there are more than
   * 5 readings.
   */
  readonly terms: number;
  /** Largest distance of a reading from the surface, mm. */
  readonly residualMm: number;
}

/** Lower bound of the half extent of the readings, mm: keeps the scaling finite where all lie on one line. */
const MIN_HALF_SPAN_MM = 1e-9;

/**
 * The surface of second degree that fits 5 to 9 readings best (least squares).
 *
 * Five readings (corners and middle) determine a plane, a twist and one bowl; six or more separate cup from
 * bow, if their places allow it. What the readings do not determine is left flat.
 * @throws {RangeError} when there are fewer than 5 or more than 9 readings, or a number is not finite
 */
export function fitSurface(readings: readonly HeightReading[]): FittedSurface {
  if (readings.length < 5 || readings.length > 9) {
    throw new RangeError(`${readings.length} readings; flatness needs 5 to 9.`);
  }
  if (!readings.every(({ atMm, heightMm }) => [...atMm, heightMm].every(Number.isFinite))) {
    throw new RangeError('every reading needs a finite place and height.');
  }
  const xs = readings.map(({ atMm }) => atMm[0]);
  const ys = readings.map(({ atMm }) => atMm[1]);
  const middle: Point = [mid(xs), mid(ys)];
  const half: Point = [Math.max(span(xs) / 2, MIN_HALF_SPAN_MM), Math.max(span(ys) / 2, MIN_HALF_SPAN_MM)];
  const shapes = readings.length === 5 ? BOWL : QUADRIC;
  const rowAt = (at: Point): number[] => {
    const u = (at[0] - middle[0]) / half[0];
    const v = (at[1] - middle[1]) / half[1];
    return shapes.map((shape) => shape(u, v));
  };
  const { weights, used } = leastSquares(
    readings.map(({ atMm }) => rowAt(atMm)),
    readings.map(({ heightMm }) => heightMm),
  );
  const heightAt = (at: Point): number =>
    rowAt(at).reduce((sum, value, k) => sum + value * (weights[k] ?? 0), 0);
  const residualMm = Math.max(...readings.map(({ atMm, heightMm }) => Math.abs(heightAt(atMm) - heightMm)));
  return { heightAt, terms: used, residualMm };
}

type Shape = (u: number, v: number) => number;
const PLANE_AND_TWIST: readonly Shape[] = [() => 1, (u) => u, (_, v) => v, (u, v) => u * v];
const BOWL: readonly Shape[] = [...PLANE_AND_TWIST, (u, v) => u * u + v * v];
const QUADRIC: readonly Shape[] = [...PLANE_AND_TWIST, (u) => u * u, (_, v) => v * v];

function mid(values: readonly number[]): number {
  return (Math.min(...values) + Math.max(...values)) / 2;
}

function span(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** Below this share of its own length a shape is taken to add nothing to the shapes before it. */
const DEPENDENT_REL_TOL = 1e-6;
/** Lower bound of a column's length, so that a column of zeros counts as dependent. */
const TINY = 1e-300;

/**
 * Least squares by orthogonal columns (modified Gram-Schmidt); columns that depend on those before them get
 * the weight 0.
 */
function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
): { readonly weights: readonly number[]; readonly used: number } {
  const count = rows[0]?.length ?? 0;
  const basis: {
    readonly column: number;
    readonly unit: readonly number[];
    readonly back: readonly number[];
  }[] = [];
  for (let column = 0; column < count; column++) {
    let vector = rows.map((row) => row[column] ?? 0);
    const length = norm(vector);
    // this column in terms of the original columns
    let back: number[] = Array.from({ length: count }, (_, k) => (k === column ? 1 : 0));
    for (const { unit, back: other } of basis) {
      const along = dot(vector, unit);
      vector = vector.map((value, i) => value - along * (unit[i] ?? 0));
      back = back.map((value, k) => value - along * (other[k] ?? 0));
    }
    const rest = norm(vector);
    if (rest > DEPENDENT_REL_TOL * Math.max(length, TINY)) {
      basis.push({
        column,
        unit: vector.map((value) => value / rest),
        back: back.map((value) => value / rest),
      });
    }
  }
  const weights = new Array<number>(count).fill(0);
  for (const { unit, back } of basis) {
    const along = dot(values, unit);
    back.forEach((value, k) => {
      weights[k] = (weights[k] ?? 0) + along * value;
    });
  }
  return { weights, used: basis.length };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

function norm(a: readonly number[]): number {
  return Math.sqrt(dot(a, a));
}
