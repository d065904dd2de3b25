import type { MaterialsBook } from '@pourproof/materials';
import { type JobInput, settleJob } from 'pourproof';
import { refusalLine } from './refusal-line.ts';

/** What is wrong with a job, settings by the fields of the page; `''` if nothing is. */
export function jobProblem(job: JobInput, materials: MaterialsBook): string {
  try {
    settleJob(job, { materials });
    return '';
  } catch (error) {
    const line = refusalLine(error);
    if (line === null) {
      throw error;
    }
    return line;
  }
}
