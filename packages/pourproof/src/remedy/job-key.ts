import type { JobInput } from '@pourproof/job';

/** A job as text, in whatever order its settings stand. */
export function jobKey(job: JobInput): string {
  return JSON.stringify(Object.entries(job).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
