import type { MaterialsBook } from '@pourproof/materials';
import { type JobInput, refusalOf, settleJob } from 'pourproof';

/** What is wrong with a job, in the words of the command line; `''` if nothing is. */
export function jobProblem(job: JobInput, materials: MaterialsBook): string {
  try {
    settleJob(job, { materials });
    return '';
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal === null) {
      throw error;
    }
    return [refusal.what, refusal.remedy].filter((part) => part !== '').join(' ');
  }
}
