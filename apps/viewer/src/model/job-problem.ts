import { type Job, type JobInput, settleJob } from 'pourproof';
import { refusalLine } from './refusal-line.ts';
import { type Tables, vetOptions } from './shelf.ts';

/** A job with every value in its place; `null` for one that cannot be vetted. */
export function settledJob(job: JobInput, tables: Tables): Job | null {
  return jobProblem(job, tables) === '' ? settleJob(job, vetOptions(tables)) : null;
}

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
