/** A term below this share of the sum no longer changes its last bit. */
const SERIES_REL_TOL = 1e-17;
/** Levels of the continued fraction, which reach the last bit from z = 3 on. */
const TAIL_LEVELS = 60;
/** From here on the fraction needs fewer steps than the series. */
const TAIL_FROM = 3;

/**
 * Probability that a standard normal variable is at most `z`; error below 1e-12.
 *
 * Series near 0, continued fraction (Lentz) in the tails: both are closed forms of the error function.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) {
    return Number.NaN;
  }
  const distance = Math.abs(z);
  const tail = distance < TAIL_FROM ? 0.5 - centralMass(distance) : upperTail(distance);
  return z < 0 ? tail : 1 - tail;
}

/** Density of the standard normal variable at `z`. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** Probability between 0 and z: density times z + z³/3 + z⁵/(3·5) + … */
function centralMass(z: number): number {
  let term = z;
  let sum = z;
  for (let odd = 3; term > sum * SERIES_REL_TOL; odd += 2) {
    term *= (z * z) / odd;
    sum += term;
  }
  return normalDensity(z) * sum;
}

/** Probability beyond z ≥ 3: density / (z + 1/(z + 2/(z + 3/…))), evaluated from the inside. */
function upperTail(z: number): number {
  let fraction = z;
  for (let level = TAIL_LEVELS; level >= 1; level--) {
    fraction = z + level / fraction;
  }
  return normalDensity(z) / fraction;
}
