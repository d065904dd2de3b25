import { type Cited, cited } from '../cited.ts';

/** Least and most spread, each above 0. */
export type SpreadRange = readonly [least: number, most: number];

/**
 * Between which ends the spread of ln(travel) within a board lies, every ratio equally likely, while few streaks have been measured: 0.5, which
 * is taken without coupons, by about 3.2 either way. Our own choice, a prior: slots in which nothing is seen say next to nothing of the
 * spread, and with wider ends three of them would leave a longer band than none.
 */
export const spreadWithinRange: Cited<SpreadRange> = cited([0.16, 1.6], 'prior', 'own-prior');

/**
 * The same once lengths tell of the spread, see {@link LENGTHS_THAT_TELL}. Our own choice, a prior: ends so wide that they no longer
 * matter, for then the band of a board holds its share of next slots whatever its true spread is, as a t distribution does.
 */
export const spreadWithinRangeMeasured: Cited<SpreadRange> = cited([0.06, 3], 'prior', 'own-prior');

/** Streak lengths beyond the first of their board and treatment that tell of the spread: those of three slots (our own choice). */
export const LENGTHS_THAT_TELL = 2;

/** A value under one spread, and how much weight that spread has. */
export interface WeighedSpread<T> {
  readonly spread: number;
  readonly weight: number;
  readonly value: T;
}

/** Steps of the grid of ln(spread), each time that it is laid. */
const STEPS = 16;
/** Weights of the first points from either end of the grid, by Gregory's rule; all others have 1. */
const END_SHARES: readonly number[] = [3 / 8, 7 / 6, 23 / 24];
/** Half width in standard deviations of the grid that is laid around what has weight. */
const HALF_WIDTH_SD = 4.5;
/** Times that it is laid: thousands of slots leave a spread known to a hundredth. */
const MAX_PASSES = 4;

/**
 * Weighs the spread within a board by what the slots say of it: the value under each spread on a grid, the
 * weights summing to 1.
 *
 * The grid is laid over the whole range first, and anew around what has weight until
 * its step is no wider than a standard deviation: the trapezium rule on a smooth peak is exact to 1e-6 then, and
 * where the range cuts one off its ends are weighed to the third order (Gregory's rule).
 *
 * @param range where the spread may lie
 * @param under what holds under a spread, and ln of the density of all readings under it
 */
export function learnSpread<T>(
  range: SpreadRange,
  under: (spread: number) => { readonly logEvidence: number; readonly value: T },
): readonly WeighedSpread<T>[] {
  const [least, most] = range.map(Math.log) as [number, number];
  let [from, to] = [least, most];
  for (let pass = 1; ; pass++) {
    const step = (to - from) / STEPS;
    const weighed = weigh(
      Array.from({ length: STEPS + 1 }, (_, k) => {
        const log = from + k * step;
        return { log, share: END_SHARES[Math.min(k, STEPS - k)] ?? 1, ...under(Math.exp(log)) };
      }),
    );
    const mean = weighed.reduce((sum, { log, weight }) => sum + weight * log, 0);
    const sd = Math.sqrt(weighed.reduce((sum, { log, weight }) => sum + weight * (log - mean) ** 2, 0));
    if (sd >= step || pass === MAX_PASSES) {
      return weighed.map(({ log, weight, value }) => ({ spread: Math.exp(log), weight, value }));
    }
    const half = HALF_WIDTH_SD * Math.max(sd, step / 2);
    [from, to] = [Math.max(least, mean - half), Math.min(most, mean + half)];
  }
}

interface Point<T> {
  readonly log: number;
  /** What of the step around it counts. */
  readonly share: number;
  readonly logEvidence: number;
  readonly value: T;
}

/** The weights of points a step apart. */
function weigh<T>(points: readonly Point<T>[]): readonly (Point<T> & { readonly weight: number })[] {
  const heaviest = points.reduce(
    (most, point) => Math.max(most, point.logEvidence),
    Number.NEGATIVE_INFINITY,
  );
  const raw = points.map((point) => Math.exp(point.logEvidence - heaviest) * point.share);
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return points.map((point, k) => ({ ...point, weight: (raw[k] as number) / total }));
}
