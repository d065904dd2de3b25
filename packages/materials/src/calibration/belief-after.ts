import { type BleedClass, bleedClassEndsMm } from '../bleed-travel.ts';
import { normalCdf } from '../normal.ts';
import { tabledNormalCdf } from '../tabled-normal.ts';
import type { CouponReading } from './coupon.ts';

/**
 * What is believed of ln(median travel in mm) of a board before its coupons, and the spread of one slot about
 * it.
 */
export interface BoardPrior {
  readonly medianMm: number;
  /** Standard deviation of ln(median) between boards, above 0. */
  readonly spreadBetween: number;
  /** Standard deviation of ln(travel) within a board, above 0. */
  readonly spreadWithin: number;
}

/** A mean with its standard deviation. */
export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/** A belief of ln(median travel in mm): one normal, or weights on a grid of values. */
export interface Belief extends Normal {
  readonly grid: readonly { readonly log: number; readonly weight: number }[] | null;
  /** ln of the density of the readings under the prior, streaks by their logs. */
  readonly logEvidence: number;
}

/** Half width, in standard deviations, of the grid over which censored readings are weighed. */
const GRID_HALF_WIDTH_SD = 8;
/** Its step as a share of the standard deviation, and of the spread over which the end of an interval is soft. */
const STEP_PER_SD = 0.25;
const STEP_PER_WITHIN = 0.5;
/** Widest step of ln(length) that counts as uniform error: next to a spread of 0.16, its shape makes no odds. */
const FINE_WIDTH = 0.25;
/** Most steps that it has. */
const MAX_STEPS = 400;
/** Times that the grid is laid anew around the belief, while that is narrower than a quarter of it. */
const MAX_PASSES = 3;

/**
 * What is believed of ln(median travel in mm) of a board after its coupons: ln(travel) is normal about
 * ln(median), which is normal about the prior.
 *
 * Streak lengths update it in closed form; so do those that were read in fine steps, whose error is uniform and
 * adds a twelfth of their width squared to the variance (Sheppard). “None visible” is left-censored; a class, and a length that was
 * read in steps, are intervals (an ordered probit with their ends as cuts): these are weighed on a grid over
 * ±8 standard deviations of the belief, which is exact to about 1e-6 in the mean. Without readings the result
 * is the prior.
 * @throws {RangeError} when a length or a spread is not above 0
 */
export function beliefAfter(prior: BoardPrior, readings: readonly CouponReading[]): Belief {
  for (const value of [prior.medianMm, prior.spreadBetween, prior.spreadWithin, ...lengths(readings)]) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`${value} is no length or spread of a coupon; it must be above 0 and finite.`);
    }
  }
  for (const reading of readings) {
    if (reading.kind === 'between' && !(reading.fromMm >= 0 && reading.toMm > reading.fromMm)) {
      throw new RangeError(`a streak can't lie between ${reading.fromMm} and ${reading.toMm} mm.`);
    }
  }
  return weighIntervals(afterStreaks(prior, readings), prior.spreadWithin, readings);
}

function lengths(readings: readonly CouponReading[]): number[] {
  return readings.flatMap((reading) => {
    if (reading.kind === 'streak') {
      return [reading.lengthMm, ...(reading.stepMm === undefined ? [] : [reading.stepMm])];
    }
    return reading.kind === 'none-visible' ? [reading.belowMm] : [];
  });
}

/** Width of ln(length) that a step of the rule leaves; 0 for a length that is exact. */
function logWidth({ lengthMm, stepMm = 0 }: CouponReading & { readonly kind: 'streak' }): number {
  const half = stepMm / 2;
  return half < lengthMm ? Math.log((lengthMm + half) / (lengthMm - half)) : Number.POSITIVE_INFINITY;
}

/** Middle of the interval of ln(length) that a step of the rule leaves; a little below ln of its middle. */
function logMiddle({ lengthMm, stepMm = 0 }: CouponReading & { readonly kind: 'streak' }): number {
  const share = stepMm / 2 / lengthMm;
  return Math.log(lengthMm) + Math.log1p(-share * share) / 2;
}

/** Posterior precision is 1/τ² + n/σ²; the mean is weighted by precision. */
function afterStreaks(prior: BoardPrior, readings: readonly CouponReading[]): Belief {
  const within = prior.spreadWithin;
  let mean = Math.log(prior.medianMm);
  let variance = prior.spreadBetween ** 2;
  let logEvidence = 0;
  for (const reading of readings) {
    const width = reading.kind === 'streak' ? logWidth(reading) : Number.POSITIVE_INFINITY;
    if (reading.kind === 'streak' && width <= FINE_WIDTH) {
      const off = logMiddle(reading) - mean;
      const noise = within ** 2 + width ** 2 / 12;
      const total = variance + noise;
      logEvidence -= 0.5 * (off ** 2 / total + Math.log(2 * Math.PI * total));
      mean += (variance / total) * off;
      variance *= noise / total;
    }
  }
  return { mean, sd: Math.sqrt(variance), grid: null, logEvidence };
}

function weighIntervals(start: Belief, within: number, readings: readonly CouponReading[]): Belief {
  const intervals = countedIntervals(readings);
  if (intervals.length === 0) {
    return start;
  }
  const logWeight = (log: number): number =>
    intervals.reduce(
      (sum, { low, high, count }) => sum + count * logBetween((low - log) / within, (high - log) / within),
      -0.5 * ((log - start.mean) / start.sd) ** 2,
    );
  // many readings leave a belief narrower than the first grid's step: lay it again where the belief is
  let around: Normal = start;
  let belief = onGrid(around, within, logWeight);
  for (let pass = 1; pass < MAX_PASSES && belief.sd < around.sd / 4; pass++) {
    around = { mean: belief.mean, sd: Math.max(belief.sd, STEP_PER_SD * around.sd) };
    belief = onGrid(around, within, logWeight);
  }
  const logDensity = 0.5 * Math.log(2 * Math.PI) + Math.log(start.sd);
  return { ...belief, logEvidence: start.logEvidence + belief.logEvidence - logDensity };
}

function onGrid(around: Normal, within: number, logWeight: (log: number) => number): Belief {
  const width = 2 * GRID_HALF_WIDTH_SD * around.sd;
  const finest = Math.min(STEP_PER_SD * around.sd, STEP_PER_WITHIN * within);
  const steps = Math.min(MAX_STEPS, Math.ceil(width / finest));
  const step = width / steps;
  const points = Array.from({ length: steps + 1 }, (_, k) => {
    const log = around.mean + step * (k - steps / 2);
    return { log, logWeight: logWeight(log) };
  });
  // weights relative to the heaviest point: many coupons far from the prior would underflow otherwise
  const heaviest = points.reduce((most, point) => Math.max(most, point.logWeight), Number.NEGATIVE_INFINITY);
  const raw = points.map((point) => ({ log: point.log, weight: Math.exp(point.logWeight - heaviest) }));
  const total = raw.reduce((sum, point) => sum + point.weight, 0);
  const grid = raw.map(({ log, weight }) => ({ log, weight: weight / total }));
  const mean = grid.reduce((sum, { log, weight }) => sum + weight * log, 0);
  const variance = grid.reduce((sum, { log, weight }) => sum + weight * (log - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(variance), grid, logEvidence: heaviest + Math.log(total * step) };
}

/**
 * The intervals that readings leave, equal ones once with their number: a maker reads hundreds of slots in a
 * handful of classes.
 */
function countedIntervals(
  readings: readonly CouponReading[],
): readonly { readonly low: number; readonly high: number; readonly count: number }[] {
  const counted = new Map<string, { readonly low: number; readonly high: number; readonly count: number }>();
  for (const reading of readings) {
    const ends = logInterval(reading);
    if (ends !== null) {
      const [low, high] = ends;
      const key = `${low} ${high}`;
      counted.set(key, { low, high, count: (counted.get(key)?.count ?? 0) + 1 });
    }
  }
  return [...counted.values()];
}

/** Ends of ln(travel) that a reading leaves open; `null` for a length that is exact or read in fine steps. */
function logInterval(reading: CouponReading): readonly [number, number] | null {
  if (reading.kind === 'streak') {
    const { lengthMm, stepMm = 0 } = reading;
    // what is rounded to a step lies within half of one
    return logWidth(reading) <= FINE_WIDTH
      ? null
      : [Math.log(Math.max(0, lengthMm - stepMm / 2)), Math.log(lengthMm + stepMm / 2)];
  }
  if (reading.kind === 'none-visible') {
    return [Number.NEGATIVE_INFINITY, Math.log(reading.belowMm)];
  }
  if (reading.kind === 'between') {
    return [Math.log(reading.fromMm), Math.log(reading.toMm)];
  }
  const [clean, slight, moderate] = bleedClassEndsMm.value.map(Math.log) as [number, number, number];
  const ends: Readonly<Record<BleedClass, readonly [number, number]>> = {
    clean: [Number.NEGATIVE_INFINITY, clean],
    slight: [clean, slight],
    moderate: [slight, moderate],
    severe: [moderate, Number.POSITIVE_INFINITY],
  };
  return ends[reading.class];
}

/** Ends up to this many standard deviations out are near enough for the table. */
const NEAR = 3.5;

/**
 * ln of the probability between two ends, taken in the lower tail where it keeps its digits. What no double
 * holds is as good as impossible, but not quite, so that contradicting readings leave a belief.
 */
function logBetween(low: number, high: number): number {
  const cdf = Math.max(Math.abs(low), Math.abs(high)) < NEAR ? tabledNormalCdf : normalCdf;
  const share = low > 0 ? cdf(-low) - cdf(-high) : cdf(high) - cdf(low);
  return Math.log(Math.max(share, Number.MIN_VALUE));
}
