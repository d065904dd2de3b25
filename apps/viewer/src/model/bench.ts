import { BLANK_PAGE, isSameState, type PageState } from './page-state.ts';

/** Steps that can be gone back to (our choice: more than an hour's work, and a few hundred kB in the database). */
export const MAX_STEPS = 200;

/** A state of the page and what brought it about. */
export interface Step {
  readonly state: PageState;
  /** What was done, in words. */
  readonly told: string;
  /** Names the gesture that it belongs to: acts of one gesture are one step; `''` for an act by itself. */
  readonly run: string;
}

/** All that a maker has done on one job, step by step, and the step that is shown. Plain data. */
export interface Bench {
  /** Under which it is kept. */
  readonly id: string;
  /** At least one. */
  readonly steps: readonly Step[];
  /** The step that is shown; those after it were taken back. */
  readonly at: number;
  /** Whether the oldest steps are no longer there. */
  readonly isCut: boolean;
  /** What was wrong with the last act, or what is still needed; `''` for nothing. */
  readonly note: string;
}

/** A bench on which nothing has been done. */
export function newBench(id: string, state: PageState, told: string): Bench {
  return { id, steps: [{ state, told, run: '' }], at: 0, isCut: false, note: '' };
}

/** The bench of a page that has just been opened. */
export const BLANK_BENCH: Bench = newBench('', BLANK_PAGE, 'Blank sheet');

/** What is on the page. */
export function stateOf({ steps, at }: Bench): PageState {
  return (steps[at] as Step).state;
}

/**
 * Does something: the steps that were taken back are gone, and the new state is the last step. A state that is the same is no step, and one
 * of the same gesture takes the place of the step before it.
 */
export function withStep(bench: Bench, step: Step, note: string): Bench {
  const { steps, at } = bench;
  const current = steps[at] as Step;
  if (isSameState(current.state, step.state)) {
    return { ...bench, note };
  }
  const isOfRun = step.run !== '' && step.run === current.run && at === steps.length - 1;
  const grown = [...steps.slice(0, isOfRun ? at : at + 1), step];
  const kept = grown.slice(-MAX_STEPS);
  return {
    ...bench,
    steps: kept,
    at: kept.length - 1,
    isCut: bench.isCut || kept.length < grown.length,
    note,
  };
}

/** Shows another step; one that is not there leaves all as it is. */
export function atStep(bench: Bench, at: number): Bench {
  return at === bench.at || bench.steps[at] === undefined ? bench : { ...bench, at, note: '' };
}
