import type { TypedJob } from '@pourproof/job';

/** Values of a job that change; `undefined` puts one back to its default. */
export type JobPart = { readonly [Key in keyof TypedJob]?: TypedJob[Key] | undefined };

/** Sizes of the artwork: one of them at a time. */
const SIZES = ['width', 'height', 'scale', 'capHeight'] as const;
/** What a described board speaks for. */
const FROM_BOARD = ['wood', 'grain', 'dive'] as const;
/** What means nothing without one. */
const OF_BOARD = ['block', 'margin', 'keepClear', 'place', 'turn', 'reading'] as const;

/** What means nothing without a seal. */
const OF_SEAL = ['coats', 'sealHours'] as const;

/** A job with some values changed, and without those that would contradict them. */
export function changedJob(job: TypedJob, part: JobPart): TypedJob {
  const dropped: readonly (keyof TypedJob)[] = [
    ...(SIZES.some((key) => part[key] !== undefined) ? SIZES : []),
    ...(part.board === undefined ? [] : FROM_BOARD),
    ...(part.seal === 'none' ? OF_SEAL : []),
    ...('board' in part && part.board === undefined ? OF_BOARD : []),
  ];
  const kept = Object.entries(job).filter(([key]) => !dropped.includes(key as keyof TypedJob));
  const merged = { ...Object.fromEntries(kept), ...part };
  return Object.fromEntries(Object.entries(merged).filter(([, value]) => value !== undefined));
}
