import type { Job, JobInput } from '@pourproof/job';
import { type Bench, type Candidate, candidatesFor } from './candidates.ts';
import { leastSteps } from './least-steps.ts';
import type { RemedyChange, RemedyPart } from './remedies.ts';
import type { TriedJob, TriedJobs } from './tried-jobs.ts';

/** Changes that one remedy may take together (our choice: nobody follows more at a time). */
const MAX_CHANGES = 3;
/** Jobs of a level that the next one goes on from (our choice), the nearest to clear first. */
const BEAM = 6;
/** Remedies after which no larger sets of changes are sought (our choice). */
const ENOUGH = 3;

/** A changed job on the way. */
export interface Step extends TriedJob {
  readonly changes: readonly RemedyChange[];
}

/** What a search found. */
export interface Found {
  readonly clear: readonly Step[];
  /** Of those that are not clear the nearest to it. */
  readonly nearest: Step;
  readonly isCutShort: boolean;
}

/** What a search may take. */
export interface SearchBounds {
  readonly maxTried: number;
  /** Asked before each job. */
  readonly isStopped: () => boolean;
}

/**
 * Single changes first, then pairs, then three: of each the least that clears all that is open, or, where it cannot, the least that leaves
 * fewer findings, or leaves them less far beyond their limits. Of what clears, no part can be left out.
 */
export async function search(
  root: Step,
  jobs: TriedJobs,
  bench: Bench & { readonly settle: (job: JobInput) => Job },
  { maxTried, isStopped }: SearchBounds,
): Promise<Found> {
  const isOver = (): boolean => isStopped() || jobs.count() >= maxTried;
  const clear: Step[] = [];
  let nearest = root;
  let frontier: readonly Step[] = [root];
  for (let level = 1; level <= MAX_CHANGES && clear.length < ENOUGH && frontier.length > 0; level++) {
    const next: Step[] = [];
    for (const from of frontier) {
      for (const candidate of candidatesFor(from, bench.settle(from.job), bench)) {
        if (isOver()) {
          return { clear, nearest, isCutShort: true };
        }
        const step = from.changes.some(({ part }) => part === candidate.part)
          ? null
          : await least(from, candidate, jobs);
        if (step === null) {
          continue;
        }
        if (step.open.length > 0) {
          next.push(step);
          nearest = isNearer(step, nearest) ? step : nearest;
        } else if (await isLeast(step, root, jobs)) {
          clear.push(step);
        }
      }
    }
    frontier = distinct(next)
      .toSorted((a, b) => burden(a) - burden(b))
      .slice(0, BEAM);
  }
  return { clear, nearest, isCutShort: false };
}

/** The least of a change that clears all; else the least that leaves fewer findings than before. `null` where it helps nothing. */
async function least(
  from: Step,
  { part, guess, most, at }: Candidate,
  jobs: TriedJobs,
): Promise<Step | null> {
  const triedAt = async (steps: number): Promise<TriedJob | null> => {
    const job = at(steps);
    return job === null ? null : jobs.of(job);
  };
  const all = await leastSteps(guess, most, async (steps) => (await triedAt(steps))?.open.length === 0);
  if (all !== null) {
    return withChange(from, part, await triedAt(all));
  }
  const before = burden(from);
  const isBetter = async (steps: number): Promise<boolean> => {
    const tried = await triedAt(steps);
    // another bit or seal with as many findings may be what makes a second change small
    const slack = most === 1 ? SLACK : 0;
    return tried !== null && burden(tried) < before + slack;
  };
  const some = await leastSteps(guess, guess, isBetter);
  return some === null ? null : withChange(from, part, await triedAt(some));
}

/** Weights of what is open: a caution less always counts for more than how far findings lie beyond their limits. */
const WEIGHTS = { stop: 1e6, caution: 1e3, note: 1e3 } as const;
/** Farther beyond a limit than this, as a natural logarithm, counts no more (our choice: some eight thousand times). */
const MAX_BEYOND = 9;

/** A choice that leaves as many findings is gone on from: more than distances beyond limits come to, less than one more finding. */
const SLACK = 100;

/** How far a job is from clear: stops, what else is open, and how far beyond their limits. */
function burden({ open }: TriedJob): number {
  return open.reduce((sum, { severity, measured, limit }) => {
    const beyond = Math.abs(Math.log(measured.value / limit.value));
    return sum + WEIGHTS[severity] + (Number.isNaN(beyond) ? MAX_BEYOND : Math.min(MAX_BEYOND, beyond));
  }, 0);
}

function isNearer(one: Step, other: Step): boolean {
  return (
    burden(one) < burden(other) ||
    (burden(one) === burden(other) && one.changes.length < other.changes.length)
  );
}

function withChange(from: Step, part: RemedyPart, tried: TriedJob | null): Step | null {
  return tried === null
    ? null
    : { ...tried, changes: [...from.changes, changeOf(part, from.job, tried.job)] };
}

/** What differs between two jobs. */
function changeOf(part: RemedyPart, before: JobInput, after: JobInput): RemedyChange {
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])] as (keyof JobInput)[];
  const changed = keys.filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));
  const of = (job: JobInput): JobInput =>
    Object.fromEntries(changed.filter((key) => job[key] !== undefined).map((key) => [key, job[key]]));
  return { part, from: of(before), to: of(after) };
}

/** Whether no change of several can be left out. */
async function isLeast({ changes }: Step, root: Step, jobs: TriedJobs): Promise<boolean> {
  if (changes.length === 1) {
    return true;
  }
  for (const left of changes) {
    const others = changes.filter((change) => change !== left).map(({ to }) => to);
    const job: JobInput = Object.assign({}, root.job, ...others);
    if ((await jobs.of(job))?.open.length === 0) {
      return false;
    }
  }
  return true;
}

function distinct(steps: readonly Step[]): readonly Step[] {
  const keyOf = ({ job }: Step): string =>
    JSON.stringify(Object.entries(job).toSorted(([a], [b]) => (a < b ? -1 : 1)));
  return steps.filter((step, k) => steps.findIndex((each) => keyOf(each) === keyOf(step)) === k);
}
