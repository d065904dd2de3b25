import type { HeightReading } from '@pourproof/job';
import type { Point } from '@pourproof/plane';

/** A quadratic surface fitted to readings. */
export interface FittedSurface {
  /** Height at a point of the board, mm. */
  readonly heightAt: (at: Point) => number;
  /**
   * Number of terms fitted: a plane, twist, and one bowl, or cup and bow apart where there are more than 5
   * readings.
   */
  readonly terms: number;
  /** Largest distance of a reading from the surface, mm. */
  readonly residualMm: number;
}

/** Readings on one line have no span across it, mm: scaling by this instead of 0 leaves their terms at 0. */
const MIN_HALF_SPAN_MM = 1e-9;

/**
 * The least-squares quadratic surface through 5 to 9 readings.
 *
 * Five readings (corners and middle) give a plane, twist and one bowl; from six on, cup and bow are separate
 * unless the points do not tell them apart. Terms that the readings do not determine are 0.
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

/**
 * A column whose part orthogonal to those before it is below this share of its length counts as dependent on
 * them (our choice).
 */
const DEPENDENT_REL_TOL = 1e-6;
/** Keeps the comparison strict for a column of zeros. */
const TINY = 1e-300;

/** Least squares by orthogonal columns (modified Gram–Schmidt); dependent columns get the weight 0. */
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
    // this column in terms of the original ones
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
