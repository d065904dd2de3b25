/** Chance that a slot bleeds, from counts alone. */
export interface BleedChance {
  readonly mean: number;
  /** 95 % of the belief lies below this. */
  readonly upper95: number;
}

/** Halvings of the interval from 0 to 1 that reach the last bit. */
const HALVINGS = 60;

/**
 * Chance that the next slot bleeds when `bleeding` of `slots` did, before which every chance was taken as
 * equally likely.
 *
 * Clean coupons alone prove little: after 3 of 3 clean the mean is 0.20 and the upper end 0.527.
 * @throws {RangeError} when the counts are not whole, or more bleed than there are
 */
export function bleedChance(bleeding: number, slots: number): BleedChance {
  const whole = Number.isInteger(bleeding) && Number.isInteger(slots);
  if (!(whole && bleeding >= 0 && slots >= bleeding)) {
    throw new RangeError(`${bleeding} of ${slots} slots: counts must be whole and at most all may bleed.`);
  }
  let low = 0;
  let high = 1;
  for (let turn = 0; turn < HALVINGS; turn++) {
    const middle = (low + high) / 2;
    if (atLeast(bleeding + 1, slots + 1, middle) < 0.95) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return { mean: (bleeding + 1) / (slots + 2), upper95: (low + high) / 2 };
}

/**
 * Probability of at least `count` successes in `trials` of chance p: the beta distribution by its binomial
 * sum.
 */
function atLeast(count: number, trials: number, p: number): number {
  let term = (1 - p) ** trials;
  let below = 0;
  for (let k = 0; k < count; k++) {
    below += term;
    term *= ((trials - k) / (k + 1)) * (p / (1 - p));
  }
  return 1 - below;
}
