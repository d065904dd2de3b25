import { ArtworkError } from '@pourproof/artwork/format';
import { type Job, type JobInput, settleJob } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { type Finding, type FindingCode, ProofStopped } from '@pourproof/proof';
import type { Vetted } from '@pourproof/wording';
import type { Source } from '../source.ts';
import { type VetOptions, type VetWatch, vet } from '../vet.ts';
import type { Bench } from './candidates.ts';
import { costsOf } from './costs.ts';
import { lookChange } from './look-change.ts';
import { REMEDY_PARTS, type Remedies, type Remedy, type RemedyPart } from './remedies.ts';
import { type Step, search } from './search.ts';
import { triedJobs } from './tried-jobs.ts';
import { unbeaten } from './unbeaten.ts';

/** What a remedy may take, and what it is to clear. */
export interface RemedyOptions extends Pick<VetOptions, 'shop' | 'materials' | 'coupons'> {
  /** What may be changed; all of it if left out. */
  readonly may?: readonly RemedyPart[];
  /** `cautions` clears those of findings too; stops alone if left out. */
  readonly clear?: 'stops' | 'cautions';
  /** Jobs that are tried at most; 300 if left out. */
  readonly maxTried?: number;
  /**
   * Who follows the search: told of each stage, and able to stop it. It then ends with what was found till then; before the job itself is
   * proved nothing is known, and it ends with a `ProofStopped`.
   */
  readonly watch?: RemedyWatch;
}

/** Someone who follows a search for remedies. */
export interface RemedyWatch extends VetWatch {
  /** Told before each job that is tried. */
  readonly onTried?: (soFar: { readonly tried: number; readonly found: number }) => void;
}

/** Jobs that are tried at most (our choice: some seconds for a name). */
const MAX_TRIED = 300;
/** Remedies that are proved from scratch and told at most (our choice). */
const MAX_TOLD = 6;

/**
 * The few best ways to a clear board: single changes first, then pairs, then three, each the least that clears all stops, proved from
 * scratch before it is told, and none beaten by another in all costs. A clear job has none.
 *
 * @throws what `vet` throws for the job as it is, a `ProofStopped` among it
 *
 * @example
 * ```ts
 * const { remedies, nearest } = await remedy(source, { bit: ['flat:2mm'], depth: '3mm' }, { shop, may: ['bit', 'depth'] });
 * for (const { changes, verdict, costs } of remedies) {
 *   console.log(changes.map(({ to }) => to), verdict, costs.minutes);
 * }
 * ```
 */
export async function remedy(source: Source, job: JobInput, options: RemedyOptions = {}): Promise<Remedies> {
  const { may = REMEDY_PARTS, clear = 'stops', maxTried = MAX_TRIED, watch = {}, ...own } = options;
  const proved = (changed: JobInput): Promise<Vetted> =>
    vet(source, changed, { ...own, waysOut: 'none', watch });
  const first = await proved(job);
  const isOpen = ({ severity }: Finding): boolean =>
    severity === 'stop' || (clear === 'cautions' && severity === 'caution');
  const before = {
    verdict: first.report.verdict,
    open: codesOf(first, 'note'),
    toClear: [
      ...new Set(
        first.report.findings.filter((each) => each.seenTo !== true && isOpen(each)).map(({ code }) => code),
      ),
    ],
    costs: costsOf(first.report, first.job),
  };
  const remedies: Remedy[] = [];
  const jobs = triedJobs(source, own, watch, {
    isOpen,
    before: async (tried) => {
      watch.onTried?.({ tried, found: remedies.length });
      await watch.pause?.();
    },
  });
  const settle = (changed: JobInput): Job =>
    settleJob(changed, { ...own, source: source.kind, hasFont: (source.font ?? null) !== null });
  const tried = await jobs.of(job);
  if (tried === null || tried.open.length === 0) {
    return { before, remedies: [], nearest: null, tried: jobs.count(), ended: 'all-tried' };
  }
  const root: Step = { ...tried, changes: [], moves: [] };
  const bench = {
    source,
    options: own,
    may: new Set(may),
    weight: await weightOf(source, first.job),
    settle,
  };
  let nearest = root;
  const onClear = async (step: Step): Promise<void> => {
    remedies.push(...(await provedRemedy(step, first, { drawingOf: jobs.drawingOf, proved, isOpen })));
  };
  const onNearer = (step: Step): void => {
    nearest = step;
  };
  const ended = await unlessStopped(search({ root, jobs, bench }, { maxTried, onClear, onNearer }));
  const told = unbeaten(remedies).slice(0, MAX_TOLD);
  return {
    before,
    remedies: told,
    nearest:
      told.length > 0
        ? null
        : { changes: nearest.changes, binds: [...new Set(nearest.open.map(({ code }) => code))] },
    tried: jobs.count(),
    ended,
  };
}

/** How a search ended; what was found till then is kept where whoever follows it stopped it. */
async function unlessStopped(searched: ReturnType<typeof search>): Promise<Remedies['ended']> {
  try {
    return await searched;
  } catch (error) {
    if (error instanceof ProofStopped) {
      return 'stopped';
    }
    throw error;
  }
}

/** A changed job proved from scratch; one whose proof leaves something open is no remedy. */
async function provedRemedy(
  { job, changes }: Step,
  first: Vetted,
  {
    drawingOf,
    proved,
    isOpen,
  }: {
    readonly drawingOf: (job: Job) => Promise<Drawing | null>;
    readonly proved: (job: JobInput) => Promise<Vetted>;
    readonly isOpen: (finding: Finding) => boolean;
  },
): Promise<readonly Remedy[]> {
  const vetted = await proved(job);
  if (vetted.report.findings.some((finding) => finding.seenTo !== true && isOpen(finding))) {
    return [];
  }
  const [before, after] = [await drawingOf(first.job), await drawingOf(vetted.job)];
  if (before === null || after === null) {
    return [];
  }
  return [
    {
      changes,
      job,
      verdict: vetted.report.verdict,
      remaining: codesOf(vetted, 'note'),
      costs: costsOf(vetted.report, vetted.job),
      look: lookChange(before, after),
    },
  ];
}

/** The codes of what counts, graver than a grade. */
function codesOf({ report }: Vetted, than: 'note'): readonly FindingCode[] {
  const open = report.findings.filter(({ severity, seenTo }) => severity !== than && seenTo !== true);
  return [...new Set(open.map(({ code }) => code))];
}

/** The weight axis of the font of lettering. */
async function weightOf(source: Source, { lettering }: Job): Promise<Bench['weight']> {
  if (source.kind !== 'lettering' || source.font === null || lettering.isSingleLine) {
    return null;
  }
  const { openFont } = await import('@pourproof/artwork/lettering');
  try {
    const font = await openFont(source.font);
    const axis = font.axes.find(({ tag }) => tag === 'wght');
    return axis === undefined ? null : { now: lettering.axes?.wght ?? axis.default, max: axis.max };
  } catch (error) {
    if (error instanceof ArtworkError) {
      return null;
    }
    throw error;
  }
}
