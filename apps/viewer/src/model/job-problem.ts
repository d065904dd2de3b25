import { type JobInput, settleJob } from 'pourproof';
import { refusalLine } from './refusal-line.ts';
import { type Tables, vetOptions } from './shelf.ts';

/** What is wrong with a job, settings by the fields of the page; `''` if nothing is. */
export function jobProblem(job: JobInput, tables: Tables): string {
  try {
    settleJob(job, vetOptions(tables));
    return '';
  } catch (error) {
    const line = refusalLine(error);
    if (line === null) {
      throw error;
    }
    return line;
  }
}
