import type { MaterialsBook } from '@pourproof/materials';
import { type JobInput, refusalOf as refusalOfError, settleJob } from 'pourproof';

/** Why a job can't be vetted, in the words of the command line; `''` where it can. */
export function refusalOf(job: JobInput, materials: MaterialsBook): string {
  try {
    settleJob(job, { materials });
    return '';
  } catch (error) {
    const refusal = refusalOfError(error);
    if (refusal === null) {
      throw error;
    }
    return [refusal.what, refusal.remedy].filter((part) => part !== '').join(' ');
  }
}
