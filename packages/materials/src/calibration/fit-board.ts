import { type BleedClass, bleedClassEndsMm } from '../bleed-travel.ts';
import { normalCdf } from '../normal.ts';
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

/** A median with the ends of its central 95 %. */
export interface Band {
  readonly medianMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/** What is believed of a board after its coupons. */
export interface BoardFit {
  readonly coupons: number;
  /** Mean and standard deviation of ln(median travel in mm). */
  readonly meanLog: number;
  readonly sdLog: number;
  /** The board's median travel. */
  readonly board: Band;
  /** The next slot on this board. */
  readonly nextSlot: Band;
  /** Probability that a slot on this board shows a streak longer than a length in mm above 0. */
  readonly longerThan: (lengthMm: number) => number;
}

/** Cells of the grid over which censored readings are weighed, and its half width in standard deviations. */
const GRID_STEPS = 400;
const GRID_HALF_WIDTH_SD = 8;

/**
 * Updates the prior of a board by its coupons: ln(travel) is normal about ln(median), which is normal about
 * the prior.
 *
 * Streak lengths update it in closed form. “None visible” is left-censored, a class is an interval (an
 * ordered probit with the ends of the bleed classes as cuts): these are weighed on a grid of 401 points over
 * ±8 standard deviations of the belief, which is exact to about 1e-6 in the mean. Without readings the result
 * is the prior.
 * @throws {RangeError} when a length or a spread is not above 0
 */
export function fitBoard(prior: BoardPrior, readings: readonly CouponReading[]): BoardFit {
  const belief = beliefAfter(prior, readings);
  const cdf = (log: number, spread: number): number => mixtureCdf(belief, log, spread);
  const within = prior.spreadWithin;
  return {
    coupons: readings.length,
    meanLog: belief.mean,
    sdLog: belief.sd,
    board: band(belief, (log) => cdf(log, 0)),
    nextSlot: band({ ...belief, sd: Math.hypot(belief.sd, within) }, (log) => cdf(log, within)),
    longerThan: (lengthMm) => 1 - cdf(Math.log(lengthMm), within),
  };
}

interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/**
 * Mean and standard deviation of ln(median travel in mm) of a board after its coupons, as {@link fitBoard}
 * finds them.
 *
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

/** A belief: one normal, or weights on a grid of values of the mean log. */
export interface Belief extends Normal {
  readonly grid: readonly { readonly log: number; readonly weight: number }[] | null;
}

function lengths(readings: readonly CouponReading[]): number[] {
  return readings.flatMap((reading) => {
    if (reading.kind === 'streak') {
      return [reading.lengthMm];
    }
    return reading.kind === 'none-visible' ? [reading.belowMm] : [];
  });
}

/** Posterior precision is 1/τ² + n/σ²; the mean is weighted by precision. */
function afterStreaks(prior: BoardPrior, readings: readonly CouponReading[]): Normal {
  let precision = prior.spreadBetween ** -2;
  let weighted = Math.log(prior.medianMm) * precision;
  for (const reading of readings) {
    if (reading.kind === 'streak') {
      precision += prior.spreadWithin ** -2;
      weighted += Math.log(reading.lengthMm) * prior.spreadWithin ** -2;
    }
  }
  return { mean: weighted / precision, sd: precision ** -0.5 };
}

function weighIntervals(start: Normal, within: number, readings: readonly CouponReading[]): Belief {
  const intervals = countedIntervals(readings);
  if (intervals.length === 0) {
    return { ...start, grid: null };
  }
  const logWeight = (log: number): number =>
    intervals.reduce(
      (sum, { low, high, count }) =>
        sum + count * Math.log(normalBetween((low - log) / within, (high - log) / within)),
      -0.5 * ((log - start.mean) / start.sd) ** 2,
    );
  // many readings leave a belief narrower than the first grid's step: lay it again where the belief is
  let around: Normal = start;
  let belief = onGrid(around, logWeight);
  for (let pass = 0; pass < 2; pass++) {
    const step = (2 * GRID_HALF_WIDTH_SD * around.sd) / GRID_STEPS;
    around = { mean: belief.mean, sd: Math.max(belief.sd, step) };
    belief = onGrid(around, logWeight);
  }
  return belief;
}

function onGrid(around: Normal, logWeight: (log: number) => number): Belief {
  const points = Array.from({ length: GRID_STEPS + 1 }, (_, step) => {
    const log = around.mean + GRID_HALF_WIDTH_SD * around.sd * ((2 * step) / GRID_STEPS - 1);
    return { log, logWeight: logWeight(log) };
  });
  // weights relative to the heaviest point: many coupons far from the prior would underflow otherwise
  const heaviest = points.reduce((most, point) => Math.max(most, point.logWeight), Number.NEGATIVE_INFINITY);
  const raw = points.map((point) => ({ log: point.log, weight: Math.exp(point.logWeight - heaviest) }));
  const total = raw.reduce((sum, point) => sum + point.weight, 0);
  const grid = raw.map(({ log, weight }) => ({ log, weight: weight / total }));
  const mean = grid.reduce((sum, { log, weight }) => sum + weight * log, 0);
  const variance = grid.reduce((sum, { log, weight }) => sum + weight * (log - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(variance), grid };
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
    if (reading.kind !== 'streak') {
      const [low, high] = logInterval(reading);
      const key = `${low} ${high}`;
      counted.set(key, { low, high, count: (counted.get(key)?.count ?? 0) + 1 });
    }
  }
  return [...counted.values()];
}

/** Ends of ln(travel) that a censored or classed reading leaves open. */
function logInterval(reading: Exclude<CouponReading, { kind: 'streak' }>): readonly [number, number] {
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

/** Probability between two ends, taken in the lower tail where it keeps its digits. */
function normalBetween(low: number, high: number): number {
  return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
}

/**
 * Probability that a log is below `log`, with `spread` about the board's own value (0: the board's value
 * itself).
 */
function mixtureCdf(belief: Belief, log: number, spread: number): number {
  if (belief.grid === null) {
    return normalCdf((log - belief.mean) / Math.hypot(belief.sd, spread));
  }
  if (spread > 0) {
    return belief.grid.reduce((sum, point) => sum + point.weight * normalCdf((log - point.log) / spread), 0);
  }
  return gridCdf(belief.grid, log);
}

/** Cumulated weight up to `log`, each point standing for the cell around it. */
function gridCdf(grid: readonly { readonly log: number; readonly weight: number }[], log: number): number {
  const step = ((grid.at(-1)?.log ?? 0) - (grid[0]?.log ?? 0)) / GRID_STEPS;
  let sum = 0;
  for (const point of grid) {
    const share = (log - point.log) / step + 0.5;
    if (share <= 0) {
      break;
    }
    sum += point.weight * Math.min(1, share);
  }
  return sum;
}

function band(around: Normal, cdf: (log: number) => number): Band {
  const [lowMm, medianMm, highMm] = [0.025, 0.5, 0.975].map((share) =>
    Math.exp(quantile(around, cdf, share)),
  );
  return { lowMm: lowMm ?? 0, medianMm: medianMm ?? 0, highMm: highMm ?? 0 };
}

/** Half width of the interval that holds every quantile, in standard deviations. */
const QUANTILE_HALF_WIDTH_SD = 20;
/** Halvings of it that reach the last bit. */
const HALVINGS = 70;

/** A quantile by bisection, to the last bit. */
function quantile(around: Normal, cdf: (log: number) => number, share: number): number {
  let low = around.mean - QUANTILE_HALF_WIDTH_SD * around.sd;
  let high = around.mean + QUANTILE_HALF_WIDTH_SD * around.sd;
  for (let turn = 0; turn < HALVINGS; turn++) {
    const middle = (low + high) / 2;
    if (cdf(middle) < share) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return (low + high) / 2;
}
