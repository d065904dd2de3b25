import {
  artworkSize,
  fileReading,
  JobError,
  type JobFile,
  letteringSetting,
  settleJobWith,
} from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { MeasureError } from '@pourproof/plane';

/** Why a job can't be vetted, in the words of the command line; `''` where it can. */
export function refusalOf(job: Partial<JobFile>, materials: MaterialsBook): string {
  try {
    settleJobWith(materials, job);
    artworkSize(job);
    letteringSetting(job);
    fileReading(job);
    return '';
  } catch (error) {
    if (error instanceof JobError || error instanceof MeasureError) {
      return error.message;
    }
    throw error;
  }
}
