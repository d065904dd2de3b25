import type { MaterialsBook } from '@pourproof/materials';
import { type JobFile, readingSettings, refusalOf as refusalOfError, settle } from 'pourproof';

/** Why a job can't be vetted, in the words of the command line; `''` where it can. */
export function refusalOf(job: Partial<JobFile>, materials: MaterialsBook): string {
  try {
    readingSettings(job, settle(job, { materials }));
    return '';
  } catch (error) {
    const refusal = refusalOfError(error);
    if (refusal === null) {
      throw error;
    }
    return [refusal.what, refusal.remedy].filter((part) => part !== '').join(' ');
  }
}
