/** Ends the work that it is asked in, by what it throws; nothing is left half done outside it. */
export type Poll = () => void;

/** Steps between two polls: of some microseconds each, so that a stop is heard well within 50 ms (our choice). */
const STEPS = 128;

// work is synchronous, so that what is asked is always that of the work that runs
let asked: Poll | null = null;
let left = STEPS;

/**
 * Does work whose long loops ask, every few milliseconds, whether they are to go on.
 *
 * @param ask what they ask, however deep inside; other work inside that has an `ask` of its own asks that
 */
export function asking<T>(ask: Poll, work: () => T): T {
  const around = asked;
  asked = ask;
  left = STEPS;
  try {
    return work();
  } finally {
    asked = around;
  }
}

/** Asked by loops that may take long, every few milliseconds: ends the work around if it is to be stopped, see {@link asking}. */
export function poll(): void {
  asked?.();
}

/** A step of a loop that has many, each of which takes microseconds: now and then it polls. */
export function pollStep(): void {
  if (--left <= 0) {
    left = STEPS;
    asked?.();
  }
}
