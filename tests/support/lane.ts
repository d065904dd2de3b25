import process from 'node:process';

/**
 * Which lane runs: the quick one (`npm test`) draws its cases from one fixed seed, so that it says the same every time; the long one
 * (`npm run test:long`) draws many more from a seed of its own until its time is up.
 */
export const isLong: boolean = process.env.POURPROOF_LANE === 'long';

/** Seed of every property of this run. */
export const seed: number = Number(process.env.POURPROOF_SEED ?? 20261129);

/** When the long lane ends, ms since 1970. */
export const deadline: number = Number(process.env.POURPROOF_DEADLINE ?? Infinity);

/** Longest that one property of the long lane may draw, ms, so that all get their turn. */
export const propertyMs: number = Number(process.env.POURPROOF_PROPERTY_MS ?? 30_000);

/** Times as many cases in the long lane. */
const LONG_FACTOR = 20;

/** How many cases a property draws: as given in the quick lane, many more in the long one. */
export function cases(quick: number): { numRuns: number } {
  return { numRuns: isLong ? LONG_FACTOR * quick : quick };
}
