import { ArtworkError } from '@pourproof/artwork/format';
import { type CouponRow, type Job, type JobInput, type Shop, settleJob } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import type { Drawing, LengthUnit } from '@pourproof/plane';
import {
  judgeDrawing,
  type Proof,
  ProofStopped,
  type ProofWatch,
  Stages,
  vettingSteps,
} from '@pourproof/proof';
import type { Vetted } from '@pourproof/wording';
import { type FaultBundle, ProofFault, unpacked } from './fault.ts';
import { drawingFrom, type ReadingSettings, readingSettings, withIdleNotices } from './read-drawing.ts';
import { refusalOf } from './refusal.ts';
import { isSameSource, type Source, sourceName } from './source.ts';

/** What a maker brings along besides the job. */
export interface VetOptions {
  /** Woods, sealers, resins and scales; by default those of the shop, or those that ship with pourproof. */
  readonly materials?: MaterialsBook;
  /** The maker's shop, as `readShopFile` reads it: what the job does not say is taken from it before anything is assumed. */
  readonly shop?: Shop;
  /** Test slots cut and read; a job with coupons of its own is refused then. */
  readonly coupons?: readonly CouponRow[];
  /** `none` for findings without their ways out, in a fraction of the time: verdict and figures are the same. */
  readonly waysOut?: 'tried' | 'none';
  /** Who follows the proof: told of its stages, and able to stop it. */
  readonly watch?: VetWatch;
  /** Given verdict and findings as soon as they are known; ways out, which are tried then, are still missing. */
  readonly onJudged?: (judged: Vetted) => void;
}

/** Someone who follows a vetting. */
export interface VetWatch extends ProofWatch {
  /** Waited for between the proofs of ways out, so that others have their turn and can stop it. */
  readonly pause?: () => Promise<void>;
}

/** A function that vets sources for jobs; see {@link vet}. */
export type Vetter = (source: Source, job: JobInput, options?: VetOptions) => Promise<Vetted>;

/**
 * Vets a source for a job: settles the job, reads the source, measures it, runs every check and gives the verdict.
 *
 * `artwork`, `text` and `font` of a job file only name a source; the source given here takes their place.
 *
 * @throws {JobError} when a value of the job cannot be read, makes no sense or contradicts another
 * @throws {ArtworkError} when the source cannot be read as the job asks, or holds nothing to cut
 * @throws {ProofStopped} when whoever follows it stops it; the next proof of a {@link vetter} goes on from what was whole by then
 * @throws {ProofFault} for a fault of pourproof itself, figures that do not balance among them; {@link refusalOf} turns every other
 *   error into data
 *
 * @example
 * ```ts
 * const source = { kind: 'file', name: 'sign.svg', bytes } as const;
 * const { report } = await vet(source, { bit: ['flat:1/8in'], depth: { mm: 3 }, wood: 'cherry' });
 * report.verdict; // 'clear', 'caution' or 'stop'
 * ```
 */
export async function vet(source: Source, job: JobInput, options: VetOptions = {}): Promise<Vetted> {
  return vetter()(source, job, options);
}

/**
 * Vets what a bundle holds once more, to see a fault again.
 *
 * @throws {ProofFault} where the fault is still there
 * @example
 * ```ts
 * await replay(JSON.parse(await readFile('sign.fault.json', 'utf8')));
 * ```
 */
export async function replay({ source, job, materials, shop, coupons }: FaultBundle): Promise<Vetted> {
  return vet(unpacked(source), job, {
    ...(materials === undefined ? {} : { materials }),
    ...(shop === undefined ? {} : { shop }),
    ...(coupons === undefined ? {} : { coupons }),
  });
}

/**
 * A {@link vet} that keeps the last drawing it read and the stages of the last proofs, for a page that asks about one artwork again and
 * again: it reads and measures anew only what depends on what has changed.
 */
export function vetter(): Vetter {
  let kept: { readonly source: Source; readonly settings: string; readonly drawing: Drawing } | null = null;
  const stages = new Stages();
  const materialsOf = sameObjectForEqual<MaterialsBook>();
  const shopOf = sameObjectForEqual<Shop>();
  const drawingOf = async (source: Source, job: Job): Promise<Drawing> => {
    const settings = readingSettings(job);
    const key = JSON.stringify(settings);
    if (kept === null || kept.settings !== key || !isSameSource(kept.source, source)) {
      kept = null;
      kept = { source, settings: key, drawing: await drawingFrom(source, settings) };
    }
    return kept.drawing;
  };
  return async (source, input, { watch = {}, waysOut = 'tried', onJudged, ...options } = {}) => {
    let unit: LengthUnit = 'mm';
    try {
      const { materials, shop } = options;
      const job = settleJob(input, {
        ...options,
        ...(materials === undefined ? {} : { materials: materialsOf(materials) }),
        ...(shop === undefined ? {} : { shop: shopOf(shop) }),
        source: source.kind,
        hasFont: hasFont(source, input),
      });
      unit = job.units;
      const drawing = await withIdleNotices(await drawingOf(source, job), source, job);
      const watched = stages.watchedBy(watch);
      if (waysOut === 'none') {
        return { ...judgeDrawing(drawing, sourceName(source), job, watched, 'none'), job };
      }
      const judged = onJudged === undefined ? undefined : (proof: Proof) => onJudged({ ...proof, job });
      const steps = vettingSteps(drawing, sourceName(source), job, watched, judged);
      return { ...(await walked(steps, { drawing, source, job }, watch)), job };
    } catch (error) {
      if (error instanceof ArtworkError) {
        throw error.inUnit(unit);
      }
      if (error instanceof ProofStopped) {
        throw error;
      }
      // whatever else is thrown is a fault of pourproof: all that it was given has been checked before
      throw refusalOf(error) === null ? new ProofFault(error, { source, job: input, options }) : error;
    }
  };
}

/** Woods are told apart by identity, and what is posted from thread to thread is a new copy each time. */
function sameObjectForEqual<T>(): (value: T) => T {
  let kept: { readonly value: T; readonly key: string } | null = null;
  return (value) => {
    const key = JSON.stringify(value);
    if (kept?.key !== key) {
      kept = { value, key };
    }
    return kept.value;
  };
}

/** What is vetted. */
interface Read {
  readonly drawing: Drawing;
  readonly source: Source;
  readonly job: Job;
}

/** Goes through the steps of a proof; of jobs that are tried, those that change how the artwork is read get a drawing of their own. */
async function walked(
  steps: ReturnType<typeof vettingSteps>,
  { drawing, source, job }: Read,
  { pause }: VetWatch,
): Promise<Proof> {
  // jobs that are read alike are given the same drawing: what was measured of it is kept by that
  const read = new Map([[JSON.stringify(readingSettings(job)), drawing as Drawing | null]]);
  let step = steps.next();
  while (step.done !== true) {
    await pause?.();
    const settings = readingSettings(step.value.job);
    const key = JSON.stringify(settings);
    const known = read.get(key);
    const given = known === undefined ? await redrawn(source, settings) : known;
    read.set(key, given);
    step = steps.next(given);
  }
  return step.value;
}

/** `null` where the artwork cannot be read so. */
async function redrawn(source: Source, settings: ReadingSettings): Promise<Drawing | null> {
  try {
    return await drawingFrom(source, settings);
  } catch (error) {
    if (error instanceof ArtworkError) {
      return null;
    }
    throw error;
  }
}

/** A font that letters of single strokes have no use for is there as soon as it is named. */
function hasFont({ font }: Source, input: JobInput): boolean {
  return (font ?? null) !== null || (input.singleLine === true && input.font !== undefined);
}
