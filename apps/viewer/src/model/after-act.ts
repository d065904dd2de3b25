import { letteringSource } from './artwork-source.ts';
import { atStep, type Bench, stateOf, withStep } from './bench.ts';
import { changedJob } from './changed-job.ts';
import { demoOrderJob } from './demo-order.ts';
import { jobForSource } from './job-for-source.ts';
import { jobProblem } from './job-problem.ts';
import { openedState } from './opened-state.ts';
import type { PageAct, ShelfPart } from './page-acts.ts';
import { type PageState, withoutDemo } from './page-state.ts';
import { refusalLine } from './refusal-line.ts';
import { EMPTY_SHELF, isSameShelf, type Shelf, type Tables, tablesOf } from './shelf.ts';
import { toldOf } from './told-act.ts';

/** What an act makes of the page, and what is said of it. */
interface Changed {
  readonly state: PageState;
  readonly note: string;
}

/** The bench after an act. Pure: the same acts always give the same bench. */
export function afterAct(bench: Bench, act: PageAct): Bench {
  switch (act.do) {
    case 'undo':
      return atStep(bench, bench.at - 1);
    case 'redo':
      return atStep(bench, bench.at + 1);
    case 'go-to':
      return atStep(bench, act.step);
    case 'lay':
      return readable(act.bench);
    case 'keep-as':
      return { ...bench, id: act.id, note: act.note };
    case 'note':
      return { ...bench, note: act.note };
    default: {
      const before = stateOf(bench);
      const { state, note } = refusing({ state: before, note: bench.note }, act);
      return withStep(bench, { state, told: toldOf(act, state), run: 'run' in act ? act.run : '' }, note);
    }
  }
}

/** A bench that was kept by an older page may have files on its shelf that are no longer taken: they are left out, and it is said. */
function readable(bench: Bench): Bench {
  let note = bench.note;
  const steps = bench.steps.map((step) => {
    try {
      tablesOf(step.state.shelf);
      return step;
    } catch (error) {
      const refusal = refusalLine(error);
      if (refusal === null) {
        throw error;
      }
      note = `The shop’s files of this job cannot be read any more and were left out: ${refusal}`;
      return { ...step, state: { ...step.state, shelf: EMPTY_SHELF } };
    }
  });
  return note === bench.note ? bench : { ...bench, steps, note };
}

type StateAct = Exclude<PageAct, { readonly do: 'undo' | 'redo' | 'go-to' | 'lay' | 'keep-as' | 'note' }>;

/** What cannot be used changes nothing but the note. */
function refusing(now: Changed, act: StateAct): Changed {
  try {
    return changed(now, act);
  } catch (error) {
    const note = refusalLine(error);
    if (note === null) {
      throw error;
    }
    return { state: now.state, note };
  }
}

function changed({ state, note }: Changed, act: StateAct): Changed {
  switch (act.do) {
    case 'open':
      return openedState(state, act.files);
    case 'show-demo':
      return { state: demoShown(state, act), note: '' };
    case 'leave-demo':
      return { state: withoutDemo(state), note: '' };
    case 'set-lettering':
      return { state: letteringSet(state, act), note: '' };
    case 'change-job': {
      const job = changedJob(state.job, act.part);
      const problem = jobProblem(job, tablesOf(state.shelf));
      return problem === ''
        ? { state: { ...state, job }, note: note === act.seen ? '' : note }
        : { state, note: problem };
    }
    case 'take-off':
      return partTakenOff(state, act.what);
    case 'take-shelf':
      return shelfTaken(state, act.shelf);
    default:
      return act satisfies never;
  }
}

function demoShown(state: PageState, { demo }: StateAct & { do: 'show-demo' }): PageState {
  const { aside, source: own, job, ticket } = state;
  return {
    ...state,
    source: demo,
    job: { ...demoOrderJob(), units: job.units ?? 'mm' },
    ticket: ticket + 1,
    aside: aside ?? { source: own, job },
    waitingText: '',
    waitingFile: '',
  };
}

function letteringSet(
  before: PageState,
  { text, font, part }: StateAct & { do: 'set-lettering' },
): PageState {
  const state = withoutDemo(before);
  const source = letteringSource(text, font);
  const job = changedJob(state.job, { ...part, font: font?.name });
  return {
    ...state,
    source,
    job: jobForSource(job, source, state.source),
    font: font ?? state.font,
    waitingText: '',
    waitingFile: '',
  };
}

const PART_NAMES: Readonly<Record<ShelfPart, string>> = {
  shop: 'this shop file',
  materials: 'these materials',
  coupons: 'these coupons',
};

/** A part of the shelf is left on it where a job needs it. */
function partTakenOff(state: PageState, what: ShelfPart): Changed {
  const shelf = { ...state.shelf, [what]: null };
  const next = what === 'coupons' ? withoutCoupons({ ...state, shelf }) : { ...state, shelf };
  const problem = problemOf(next, tablesOf(shelf));
  return problem === ''
    ? { state: next, note: '' }
    : { state, note: `The job needs ${PART_NAMES[what]}: ${problem}` };
}

function withoutCoupons(state: PageState): PageState {
  const bare = ({ coupons: _, ...job }: PageState['job']): PageState['job'] => job;
  const { aside } = state;
  return { ...state, job: bare(state.job), aside: aside && { ...aside, job: bare(aside.job) } };
}

function shelfTaken(state: PageState, shelf: Shelf): Changed {
  if (isSameShelf(shelf, state.shelf)) {
    return { state, note: '' };
  }
  const problem = problemOf(state, tablesOf(shelf));
  return problem === ''
    ? { state: { ...state, shelf }, note: '' }
    : { state, note: `The job does not go with the other shop file: ${problem}` };
}

function problemOf({ job, aside }: PageState, tables: Tables): string {
  return [job, aside?.job ?? {}].map((each) => jobProblem(each, tables)).find((text) => text !== '') ?? '';
}
