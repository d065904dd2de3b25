import type { SettingKey, TypedJob } from '@pourproof/job';
import { keysOnlyFor } from './keys-only-for.ts';

/** Changes to a job; `undefined` resets a value to its default. */
export type JobPart = { readonly [Key in keyof TypedJob]?: TypedJob[Key] | undefined };

/** Sizes of the artwork, of which a job has one. */
const SIZES: readonly SettingKey[] = ['width', 'height', 'scale', 'capHeight'];

/** A job with changes made, without the values that would contradict them. */
export function changedJob(job: TypedJob, part: JobPart): TypedJob {
  const dropsBoard = 'board' in part && part.board === undefined;
  const dropped: readonly string[] = [
    ...(SIZES.some((key) => part[key] !== undefined) ? SIZES : []),
    ...(part.board === undefined ? [] : keysOnlyFor(({ board }) => board === 'without')),
    ...(dropsBoard ? keysOnlyFor(({ board }) => board === 'with') : []),
    ...(part.seal === 'none' ? keysOnlyFor(({ isSealed }) => isSealed === true) : []),
  ];
  const kept = Object.entries(job).filter(([key]) => !dropped.includes(key));
  const merged = { ...Object.fromEntries(kept), ...part };
  return Object.fromEntries(Object.entries(merged).filter(([, value]) => value !== undefined));
}
