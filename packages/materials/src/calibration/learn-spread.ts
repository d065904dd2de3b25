import { type Cited, cited } from '../cited.ts';

/**
 * Between which ends the spread of ln(travel) within a board lies, every ratio equally likely: 0.5, which is taken
 * without coupons, by about 3.2 either way. Our own choice, a prior: narrower, and the bands hold too few of a shop
 * with a spread of 0.9; wider, and three clean slots would leave a longer band than none.
 */
export const spreadWithinRange: Cited<readonly [least: number, most: number]> = cited(
  [0.16, 1.6],
  'prior',
  'own-prior',
);

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
 * The grid is laid over the whole range of {@link spreadWithinRange} first, and anew around what has weight until
 * its step is no wider than a standard deviation: the trapezium rule on a smooth peak is exact to 1e-6 then, and
 * where the range cuts one off its ends are weighed to the third order (Gregory's rule).
 *
 * @param under what holds under a spread, and ln of the density of all readings under it
 */
export function learnSpread<T>(
  under: (spread: number) => { readonly logEvidence: number; readonly value: T },
): readonly WeighedSpread<T>[] {
  const [least, most] = spreadWithinRange.value.map(Math.log) as [number, number];
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
