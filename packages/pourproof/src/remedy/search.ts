import type { Job, JobInput } from '@pourproof/job';
import { burden, mayGoOn } from './burden.ts';
import type { Candidate } from './candidate.ts';
import { type Bench, candidatesFor } from './candidates.ts';
import { jobKey } from './job-key.ts';
import { leastSteps } from './least-steps.ts';
import type { RemedyChange, RemedyPart } from './remedies.ts';
import type { TriedJob, TriedJobs } from './tried-jobs.ts';

/** Changes that one remedy may take together (our choice: nobody follows more at a time). */
const MAX_CHANGES = 3;
/** Jobs of a level that the next one goes on from (our choice), the nearest to clear first. */
const BEAM = 6;
/** Remedies after which nothing else is gone on from (our choice). */
const ENOUGH = 3;

/** A change on the way, of which less may be done. */
interface Move {
  readonly candidate: Candidate;
  readonly steps: number;
}

/** A changed job on the way. */
export interface Step extends TriedJob {
  readonly changes: readonly RemedyChange[];
  readonly moves: readonly Move[];
}

/** What a search may take, and what it is followed by. */
export interface SearchBounds {
  readonly maxTried: number;
  /** Given each changed job that is clear, as soon as it is found. */
  readonly onClear: (step: Step) => Promise<void>;
  /** Given each that is nearer to clear than all before it. */
  readonly onNearer: (step: Step) => void;
}

/** What a search goes through. */
interface Ground {
  readonly root: Step;
  readonly jobs: TriedJobs;
  readonly bench: Bench & { readonly settle: (job: JobInput) => Job };
}

/**
 * Single changes first, then pairs, then three: of each the least that clears all that is open. Where none does, what a formula proposes is
 * gone on from if it leaves fewer findings, or leaves them less far beyond their limits. Of what clears, no part can be left out, and of
 * none can less be done.
 *
 * @returns whether all was tried
 */
export async function search(
  ground: Ground,
  { maxTried, onClear, onNearer }: SearchBounds,
): Promise<'all-tried' | 'at-its-bound'> {
  const { root, jobs, bench } = ground;
  let clear = 0;
  let nearest = root;
  let frontier: readonly Step[] = [root];
  for (let level = 1; level <= MAX_CHANGES && clear < ENOUGH && frontier.length > 0; level++) {
    const next: Step[] = [];
    for (const from of frontier) {
      if (clear >= ENOUGH) {
        break;
      }
      for (const candidate of candidatesFor(from, bench.settle(from.job), bench)) {
        if (jobs.count() >= maxTried) {
          return 'at-its-bound';
        }
        const step = from.changes.some(({ part }) => part === candidate.part)
          ? null
          : await least(from, candidate, jobs);
        if (step === null) {
          continue;
        }
        if (step.open.length > 0) {
          next.push(step);
          if (isNearer(step, nearest)) {
            nearest = step;
            onNearer(step);
          }
        } else if (await isLeast(step, ground)) {
          clear++;
          await onClear(await lessened(step, ground));
        }
      }
    }
    frontier = distinct(next)
      .toSorted((a, b) => burden(a.open) - burden(b.open))
      .slice(0, BEAM);
  }
  return 'all-tried';
}

/** A choice that leaves as many findings is gone on from: more than distances beyond limits come to, less than one more finding. */
const SLACK = 100;

/** The least of a change that clears all; else what is proposed of it; `null` where that helps nothing. */
async function least(from: Step, candidate: Candidate, jobs: TriedJobs): Promise<Step | null> {
  const { guess, most } = candidate;
  const triedAt = async (steps: number): Promise<TriedJob | null> => {
    const job = candidate.at(steps);
    return job === null ? null : jobs.of(job);
  };
  const proposed = await triedAt(guess);
  const made = async (steps: number): Promise<Step | null> =>
    withMove(from, { candidate, steps }, await triedAt(steps));
  if (
    proposed === null ||
    proposed.open.length === 0 ||
    (most > guess && mayGoOn(from.open, proposed.open))
  ) {
    const enough = await leastSteps(guess, most, async (steps) => (await triedAt(steps))?.open.length === 0);
    if (enough !== null) {
      return made(enough);
    }
  }
  if (proposed === null) {
    return null;
  }
  // another bit or seal with as many findings may be what makes a second change small
  const slack = most === 1 ? SLACK : 0;
  return burden(proposed.open) < burden(from.open) + slack ? made(guess) : null;
}

function isNearer(one: Step, other: Step): boolean {
  const [a, b] = [burden(one.open), burden(other.open)];
  return a < b || (a === b && one.changes.length < other.changes.length);
}

function withMove(from: Step, move: Move, tried: TriedJob | null): Step | null {
  return tried === null
    ? null
    : {
        ...tried,
        changes: [...from.changes, changeOf(move.candidate.part, from.job, tried.job)],
        moves: [...from.moves, move],
      };
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
async function isLeast({ changes }: Step, { root, jobs }: Ground): Promise<boolean> {
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

/** As little as is enough of each change before the last: each was as much as it takes without those after it. */
async function lessened(step: Step, ground: Ground): Promise<Step> {
  let least = step;
  for (const k of step.moves.slice(0, -1).keys()) {
    least = await lessenedAt(least, k, ground);
  }
  return least;
}

async function lessenedAt(step: Step, k: number, { root, jobs }: Ground): Promise<Step> {
  const { changes, moves } = step;
  const [change, move] = [changes[k], moves[k]];
  const others = changes.filter((each) => each !== change).map(({ to }) => to);
  const keys = Object.keys(change?.to ?? {});
  const isAlone = !others.some((to) => keys.some((key) => key in to));
  if (change === undefined || move === undefined || move.steps === 1 || !isAlone) {
    return step;
  }
  const toOf = (steps: number): JobInput =>
    Object.fromEntries(Object.entries(move.candidate.at(steps) ?? {}).filter(([key]) => keys.includes(key)));
  const triedAt = (steps: number): Promise<TriedJob | null> =>
    jobs.of(Object.assign({}, root.job, ...others, toOf(steps)));
  const steps = await leastSteps(
    move.steps,
    move.steps,
    async (fewer) => (await triedAt(fewer))?.open.length === 0,
  );
  const tried = steps === null || steps === move.steps ? null : await triedAt(steps);
  return tried === null || steps === null
    ? step
    : {
        ...tried,
        changes: changes.with(k, { ...change, to: toOf(steps) }),
        moves: moves.with(k, { ...move, steps }),
      };
}

function distinct(steps: readonly Step[]): readonly Step[] {
  const seen = new Set<string>();
  return steps.filter(({ job }) => {
    const key = jobKey(job);
    return !seen.has(key) && seen.add(key) !== undefined;
  });
}
