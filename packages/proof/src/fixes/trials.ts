import { type Job, JobError, type JobErrorCode, type JobInput, settleJob } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import type { Finding } from '../report/finding-schema.ts';
import type { Fix, FixStep } from '../report/fix-schema.ts';
import { withSteps } from './apply-fix.ts';
import { changedDrawing } from './changed-drawing.ts';
import { type Changed, changedFindings } from './compare-findings.ts';
import { lateProposals } from './late-proposals.ts';
import { factorOf, movedBy } from './moved-by.ts';
import { type Proved, prove } from './prove.ts';

/** A job that is tried, and how its drawing comes of that of the job it comes from. */
export interface TrialJob {
  readonly job: Job;
  /** How much larger the artwork is. */
  readonly scaledBy: number;
  /** Whether only reading the artwork anew gives its drawing. */
  readonly isReadAnew: boolean;
}

/** Asks for the drawing of a job that is tried: `null` where the artwork cannot be read so, `unread` where nobody can read it anew. */
export type Redrawing<Result> = Generator<TrialJob, Result, Drawing | null | 'unread'>;

/**
 * What a trial comes to: the findings of the changed job and what is worse among them, that it is refused, that nothing changed, that nobody
 * could read the artwork for it, or that no proof was left for it.
 */
export type TrialResult =
  | ({ readonly is: 'proved' } & Changed)
  | { readonly is: 'refused'; readonly code: JobErrorCode | null }
  | { readonly is: 'same' | 'unread' | 'spent' };

/**
 * Proofs that the trials of one job may take altogether: as many as prove so many edges (our choice: about two seconds), at least and at the most so
 * many.
 */
const EDGES = 100_000;
const LEAST_PROOFS = 20;
const MOST_PROOFS = 30;
/**
 * Edges of the drawings of which all is kept that was measured of them, about 5 kB an edge, and the least and the most of such drawings (our
 * choice).
 */
const EDGES_KEPT = 40_000;
const LEAST_KEPT = 4;
const MOST_KEPT = 12;
/** What a proof counts, and one that keeps the cut, as with another seal: about their shares of the time. */
const WHOLE = 5;
const KEEPS_CUT = 1;

/** Ways out that change what the reader makes of the artwork, beyond its size. */
const READS_ANEW: ReadonlySet<FixStep['do']> = new Set(['join-ends', 'track', 'space-lines']);

/** Trials of one job: each changed job is proved once. */
export interface Trials {
  /** Makes ways out one after the other and proves the job; `same` too where no setting of it expresses them. */
  readonly tried: (steps: readonly FixStep[]) => Redrawing<TrialResult>;
  /** Makes a way out that is work on the drawing; `null` where it takes a maker's eye. */
  readonly drawn: (fix: Fix, finding: Finding) => TrialResult | null;
}

/** Trials of ways out for a job that has been proved. */
export function trialsOf({ job, drawing, findings, stages }: Proved): Trials {
  const most = keptFor(drawing);
  const aside = stages.aside(most);
  const late = lateProposals(most);
  const known = new Map<string, TrialResult>();
  let left = WHOLE * proofsFor(drawing);
  const provedAs = (
    changed: Job,
    on: Drawing | null | 'unread',
    steps: readonly FixStep[],
    cost: number,
  ): TrialResult => {
    if (on === 'unread') {
      return { is: 'unread' };
    }
    left -= cost;
    return on === null
      ? { is: 'refused', code: null }
      : orRefused(() => ({
          is: 'proved',
          ...changedFindings(
            findings,
            late(() => prove(on, changed, aside).findings),
            { moved: movedBy(steps, drawing, on), seenTo: job.seenTo },
          ),
        }));
  };
  return {
    drawn: (fix, finding) => {
      const changed = changedDrawing(drawing, fix, finding);
      if (changed === null) {
        return null;
      }
      return left < WHOLE ? { is: 'spent' } : provedAs(job, changed, [fix], WHOLE);
    },
    *tried(steps) {
      const input = changedInput(job, steps);
      if (input === null) {
        return { is: 'same' };
      }
      const key = JSON.stringify(input);
      const before = known.get(key);
      if (before !== undefined) {
        return before;
      }
      const settled = settledAgain(job, input);
      let result: TrialResult = { is: 'same' };
      if ('code' in settled) {
        result = { is: 'refused', code: settled.code };
      } else if (!isSameJob(settled.job, job)) {
        const scaledBy = factorOf(steps);
        const isReadAnew = steps.some((step) => READS_ANEW.has(step.do));
        const isCutAnew = scaledBy !== 1 || isReadAnew || !isSameCut(settled.job, job);
        const cost = isCutAnew ? WHOLE : KEEPS_CUT;
        result =
          left < cost
            ? { is: 'spent' }
            : provedAs(settled.job, yield { job: settled.job, scaledBy, isReadAnew }, steps, cost);
      }
      known.set(key, result);
      return result;
    },
  };
}

function orRefused(attempt: () => TrialResult): TrialResult {
  try {
    return attempt();
  } catch (error) {
    if (error instanceof JobError) {
      return { is: 'refused', code: error.code };
    }
    throw error;
  }
}

function changedInput({ input, materials, shop, source }: Job, steps: readonly FixStep[]): JobInput | null {
  return withSteps(input, steps, { materials, shop: shop ?? undefined, isLettering: source === 'lettering' });
}

function settledAgain(
  { materials, shop, source }: Job,
  input: JobInput,
): { readonly job: Job } | { readonly code: JobErrorCode } {
  try {
    const hasFont = input.singleLine !== true;
    return {
      job: settleJob(input, { materials, shop: shop ?? undefined, source: source ?? undefined, hasFont }),
    };
  } catch (error) {
    if (error instanceof JobError) {
      return { code: error.code };
    }
    throw error;
  }
}

/** How many proofs the ways out of a drawing may take, by the edges of its outlines. */
export function proofsFor(drawing: Drawing): number {
  return Math.min(MOST_PROOFS, Math.max(LEAST_PROOFS, Math.round(EDGES / edgesOf(drawing))));
}

/** Of how many jobs that are tried all is kept: a change that completes another one is tried long after it. */
function keptFor(drawing: Drawing): number {
  return Math.min(MOST_KEPT, Math.max(LEAST_KEPT, Math.round(EDGES_KEPT / edgesOf(drawing))));
}

function edgesOf({ shapes }: Drawing): number {
  return shapes.reduce((sum, { region }) => sum + region.coords.length / 2, 0);
}

/** Whether two jobs cut the same of a drawing. */
function isSameCut(one: Job, other: Job): boolean {
  const cut = ({ bits, depthMm, rounds, toleranceMm }: Job): string =>
    JSON.stringify({ bits, depthMm, rounds, toleranceMm });
  return cut(one) === cut(other);
}

/** Whether two jobs mean the same, however they were typed. */
function isSameJob(one: Job, other: Job): boolean {
  return meaning(one) === meaning(other);
}

function meaning({
  input: _,
  given: __,
  defaults: ___,
  materials: ____,
  shop: _____,
  fromShop: ______,
  ...settled
}: Job): string {
  return JSON.stringify(settled);
}
