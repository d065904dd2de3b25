import type { TriedJob } from './tried-jobs.ts';

/** Weights of what is open: a caution less always counts for more than how far findings lie beyond their limits. */
const WEIGHTS = { stop: 1e6, caution: 1e3, note: 1e3 } as const;
/** Farther beyond a limit than this, as a natural logarithm, counts no more (our choice: some eight thousand times). */
const MAX_BEYOND = 9;

type Open = TriedJob['open'];

/** How many findings are open, a stop for more than any number of cautions. */
function countOf(open: Open): number {
  return open.reduce((sum, { severity }) => sum + WEIGHTS[severity], 0);
}

/** How far a job is from clear: what is open, and how far beyond its limits. */
export function burden(open: Open): number {
  return countOf(open) + open.reduce((sum, finding) => sum + beyond(finding), 0);
}

/**
 * Whether more of a change may clear what it has left: none of it is new or as far beyond its limit as before.
 *
 * @param before what was open before the change
 */
export function mayGoOn(before: Open, left: Open): boolean {
  return left.every((finding) => {
    const was = before.filter(({ code, severity }) => code === finding.code && severity === finding.severity);
    return was.some((each) => beyond(finding) < beyond(each) - LEAST_GAIN);
  });
}

/** A finding that comes nearer to its limit by less, as a natural logarithm, stays (our choice: one percent). */
const LEAST_GAIN = 0.01;

function beyond({ measured, limit }: Open[number]): number {
  // of a limit of nothing, as an area off the board, what there is of it
  const ratio =
    limit.value === 0 ? Math.log1p(measured.value) : Math.abs(Math.log(measured.value / limit.value));
  return Number.isNaN(ratio) ? MAX_BEYOND : Math.min(MAX_BEYOND, ratio);
}
