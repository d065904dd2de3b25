import { type CouponRow, type Job, type JobInput, settleJob } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { type Drawing, InternalError } from '@pourproof/plane';
import { vetDrawing } from '@pourproof/proof';
import type { Vetted } from '@pourproof/wording';
import { readDrawing, readingSettings, withIdleNotices } from './read-drawing.ts';
import { refusalOf } from './refusal.ts';
import { isSameSource, type Source, sourceName } from './source.ts';

/** What a maker brings along besides the job. */
export interface VetOptions {
  /** Woods, sealers, resins and scales; those that ship with pourproof by default. */
  readonly materials?: MaterialsBook;
  /** Test slots cut and read; a job with coupons of its own is refused then. */
  readonly coupons?: readonly CouponRow[];
}

/** A function that vets sources for jobs; see {@link vet}. */
export type Vetter = (source: Source, job: JobInput, options?: VetOptions) => Promise<Vetted>;

/**
 * Vets a source for a job: settles the job, reads the source, measures it, runs every check and gives the verdict.
 *
 * The keys `artwork`, `text` and `font` of a job file only name a source; the source that is given here stands for them.
 *
 * @throws {JobError} when a value of the job cannot be read or makes no sense
 * @throws {ArtworkError} when the source cannot be read as the job asks for, or holds nothing to cut
 * @throws {InternalError} for a fault of pourproof itself; {@link refusalOf} turns every other error into data
 */
export async function vet(source: Source, job: JobInput, options: VetOptions = {}): Promise<Vetted> {
  return vetter()(source, job, options);
}

/**
 * A {@link vet} that keeps the drawing that it read last, for a page that asks about one artwork again and again: a change of the job that
 * does not concern reading leaves it standing.
 */
export function vetter(): Vetter {
  let kept: { readonly source: Source; readonly settings: string; readonly drawing: Drawing } | null = null;
  const drawingOf = async (source: Source, asked: JobInput, job: Job): Promise<Drawing> => {
    const settings = readingSettings(asked, job);
    const key = JSON.stringify(settings);
    if (kept === null || kept.settings !== key || !isSameSource(kept.source, source)) {
      kept = null;
      kept = { source, settings: key, drawing: await readDrawing(source, settings) };
    }
    return kept.drawing;
  };
  return async (source, asked, options = {}) => {
    try {
      const hasFont = (source.font ?? null) !== null;
      const job = settleJob(asked, { ...options, source: source.kind, hasFont });
      const drawing = await withIdleNotices(await drawingOf(source, asked, job), source, job);
      return { ...vetDrawing(drawing, sourceName(source), job), job };
    } catch (error) {
      throw refusalOf(error) === null ? faultFrom(error) : error;
    }
  };
}

/** Whatever else is thrown is a fault of pourproof: all that it was given has been checked before. */
function faultFrom(error: unknown): InternalError {
  if (error instanceof InternalError) {
    return error;
  }
  const fault = new InternalError(error instanceof Error ? `${error.name}: ${error.message}` : String(error));
  fault.cause = error;
  return fault;
}
