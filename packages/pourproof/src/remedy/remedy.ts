import { ArtworkError } from '@pourproof/artwork/format';
import { type Job, type JobInput, settleJob } from '@pourproof/job';
import { type Finding, type FindingCode, ProofStopped, type ProofWatch } from '@pourproof/proof';
import type { Vetted } from '@pourproof/wording';
import { readDrawing } from '../read-drawing.ts';
import type { Source } from '../source.ts';
import { type VetOptions, vet } from '../vet.ts';
import type { Bench } from './candidates.ts';
import { costsOf } from './costs.ts';
import { lookChange } from './look-change.ts';
import { REMEDY_PARTS, type Remedies, type Remedy, type RemedyPart } from './remedies.ts';
import { type Found, type Step, search } from './search.ts';
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
  /** Who follows the search: told of each stage, and able to end it, with what was found till then. */
  readonly watch?: ProofWatch;
}

/** Jobs that are tried at most (our choice: some seconds for a name). */
const MAX_TRIED = 300;
/** Remedies that are proved from scratch and told at most (our choice). */
const MAX_TOLD = 6;

/**
 * The few best ways to a clear board: single changes first, then pairs, then three, each the least that clears all stops, proved from
 * scratch before it is told, and none beaten by another in all costs. A clear job has none.
 *
 * @throws what `vet` throws for the job as it is
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
  const proved = (changed: JobInput): Promise<Vetted> => vet(source, changed, { ...own, waysOut: 'none' });
  const first = await proved(job);
  const isOpen = ({ severity }: Finding): boolean =>
    severity === 'stop' || (clear === 'cautions' && severity === 'caution');
  const before = {
    verdict: first.report.verdict,
    open: codesOf(first, 'note'),
    costs: costsOf(first.report, first.job),
  };
  const jobs = triedJobs(source, own, watch, isOpen);
  const settle = (changed: JobInput): Job =>
    settleJob(changed, { ...own, source: source.kind, hasFont: (source.font ?? null) !== null });
  const bench: Bench & { settle: typeof settle } = {
    source,
    options: own,
    may: new Set(may),
    weight: await weightOf(source, first.job),
    settle,
  };
  const tried = await jobs.of(job);
  if (tried === null || tried.open.length === 0) {
    return { before, remedies: [], nearest: null, tried: jobs.count(), isCutShort: false };
  }
  const found = await searched({ ...tried, changes: [] }, jobs, bench, { maxTried, watch });
  const remedies = await told(found.clear, first, { source, proved, isOpen });
  return {
    before,
    remedies,
    nearest:
      remedies.length > 0
        ? null
        : {
            changes: found.nearest.changes,
            binds: [...new Set(found.nearest.open.map(({ code }) => code))],
          },
    tried: jobs.count(),
    isCutShort: found.isCutShort,
  };
}

/** The search, ended early where whoever follows it says so. */
async function searched(
  root: Step,
  jobs: ReturnType<typeof triedJobs>,
  bench: Parameters<typeof search>[2],
  { maxTried, watch }: { readonly maxTried: number; readonly watch: ProofWatch },
): Promise<Found> {
  try {
    return await search(root, jobs, bench, { maxTried, isStopped: () => watch.isStopped?.() === true });
  } catch (error) {
    if (error instanceof ProofStopped) {
      return { clear: [], nearest: root, isCutShort: true };
    }
    throw error;
  }
}

/** The changed jobs, each proved from scratch; one whose proof leaves something open is no remedy. */
async function told(
  steps: readonly Step[],
  first: Vetted,
  {
    source,
    proved,
    isOpen,
  }: {
    readonly source: Source;
    readonly proved: (job: JobInput) => Promise<Vetted>;
    readonly isOpen: (finding: Finding) => boolean;
  },
): Promise<readonly Remedy[]> {
  const drawing = await readDrawing(source, first.job);
  const remedies: Remedy[] = [];
  for (const { job, changes } of steps) {
    const vetted = await proved(job);
    if (vetted.report.findings.some((finding) => finding.seenTo !== true && isOpen(finding))) {
      continue;
    }
    remedies.push({
      changes,
      job,
      verdict: vetted.report.verdict,
      remaining: codesOf(vetted, 'note'),
      costs: costsOf(vetted.report, vetted.job),
      look: lookChange(drawing, await readDrawing(source, vetted.job)),
    });
  }
  return unbeaten(remedies).slice(0, MAX_TOLD);
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
