import type { TypedJob } from '@pourproof/job';
import type { JobPart } from './changed-job.ts';

/** The part of a job that says whether the maker has seen to a finding. */
export function seenToChange({ seenTo = [] }: TypedJob, code: string, isSeenTo: boolean): JobPart {
  const codes = [...seenTo.filter((each) => each !== code), ...(isSeenTo ? [code] : [])];
  return { seenTo: codes.length === 0 ? undefined : codes };
}
