import { normalCdf, normalDensity } from './normal.ts';

/** Entries of the table for each unit of z, and the z that it ends at. */
const PER_UNIT = 64;
const REACH = 9;

/**
 * Cumulated probability of the standard normal variable by cubic interpolation in a table: within 3e-10, twenty
 * times as fast as {@link normalCdf}. For sums over many z; far tails need the other.
 */
export function tabledNormalCdf(z: number): number {
  if (!(z > -REACH && z < REACH)) {
    return z < 0 ? 0 : 1;
  }
  const at = (z + REACH) * PER_UNIT;
  const k = Math.min(Math.floor(at), VALUES.length - 2);
  const t = at - k;
  const [a, b] = [VALUES[k] as number, VALUES[k + 1] as number];
  const [da, db] = [(SLOPES[k] as number) / PER_UNIT, (SLOPES[k + 1] as number) / PER_UNIT];
  // Hermite's cubic through both values and slopes
  const rise = b - a;
  return a + t * (da + t * (3 * rise - 2 * da - db + t * (da + db - 2 * rise)));
}

const POINTS: readonly number[] = Array.from(
  { length: 2 * REACH * PER_UNIT + 1 },
  (_, k) => k / PER_UNIT - REACH,
);
const VALUES: Float64Array = Float64Array.from(POINTS, normalCdf);
const SLOPES: Float64Array = Float64Array.from(POINTS, normalDensity);
