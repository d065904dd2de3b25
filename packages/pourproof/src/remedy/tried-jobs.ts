import { ArtworkError } from '@pourproof/artwork/format';
import { type Job, JobError, type JobInput, settleJob } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { type Finding, findingsIn, type ProofWatch, Stages } from '@pourproof/proof';
import { drawingFrom, readingSettings } from '../read-drawing.ts';
import type { Source } from '../source.ts';
import type { VetOptions } from '../vet.ts';
import { jobKey } from './job-key.ts';

/** A job that was tried. */
export interface TriedJob {
  readonly job: JobInput;
  /** What is to be cleared in it. */
  readonly open: readonly Finding[];
}

/** Jobs of one source, each tried once. */
export interface TriedJobs {
  /** `null` where the job is refused, or the artwork cannot be read so. */
  readonly of: (job: JobInput) => Promise<TriedJob | null>;
  readonly count: () => number;
  /** The drawing of a job, kept where it was tried lately; `null` where the artwork cannot be read so. */
  readonly drawingOf: (settled: Job) => Promise<Drawing | null>;
}

/** Drawings kept: of the sizes and weights around the one at hand (our choice). */
const KEPT_DRAWINGS = 6;

/** How jobs are tried. */
export interface Trying {
  /** What is to be cleared. */
  readonly isOpen: (finding: Finding) => boolean;
  /** Waited for before each job, with how many were tried by then. */
  readonly before: (tried: number) => Promise<void>;
}

/**
 * Tries jobs of a source with the stages of those before kept. */
export function triedJobs(
  source: Source,
  options: VetOptions,
  watch: ProofWatch,
  { isOpen, before }: Trying,
): TriedJobs {
  const stages = new Stages(watch);
  const known = new Map<string, TriedJob | null>();
  const drawings = new Map<string, Drawing | null>();
  let count = 0;
  const drawingOf = async (settings: ReturnType<typeof readingSettings>): Promise<Drawing | null> => {
    const key = JSON.stringify(settings);
    const kept = drawings.get(key);
    if (kept !== undefined) {
      drawings.delete(key);
      drawings.set(key, kept);
      return kept;
    }
    const drawing = await drawingFrom(source, settings).catch(orNull);
    drawings.set(key, drawing);
    for (const oldest of [...drawings.keys()].slice(0, drawings.size - KEPT_DRAWINGS)) {
      drawings.delete(oldest);
    }
    return drawing;
  };
  const tried = async (job: JobInput): Promise<TriedJob | null> => {
    const { materials, shop, coupons } = options;
    try {
      const settled = settleJob(job, {
        materials,
        shop,
        coupons,
        source: source.kind,
        hasFont: (source.font ?? null) !== null,
      });
      const drawing = await drawingOf(readingSettings(settled));
      if (drawing === null) {
        return null;
      }
      await before(count);
      count++;
      return { job, open: findingsIn(drawing, settled, stages).filter(isOpen) };
    } catch (error) {
      if (error instanceof JobError) {
        return null;
      }
      throw error;
    }
  };
  return {
    of: async (job) => {
      const key = jobKey(job);
      const once = known.get(key);
      const result = once === undefined ? await tried(job) : once;
      known.set(key, result);
      return result;
    },
    count: () => count,
    drawingOf: (settled) => drawingOf(readingSettings(settled)),
  };
}

function orNull(error: unknown): null {
  if (error instanceof ArtworkError) {
    return null;
  }
  throw error;
}
