import { ArtworkError } from '@pourproof/artwork';
import { JobError } from '@pourproof/job';
import { MeasureError } from '@pourproof/plane';
import type { Failure } from './question.ts';

/** An error in the words that the page shows; what the maker can't put right is called a fault of pourproof. */
export function failureOf(error: unknown): Failure {
  if (error instanceof ArtworkError) {
    const { message, remedy, line, column } = error;
    const where =
      line === undefined ? '' : `Line ${line}${column === undefined ? '' : `, column ${column}`} of the file`;
    return { what: message, where, remedy };
  }
  if (error instanceof JobError || error instanceof MeasureError) {
    return { what: error.message, where: 'In the job', remedy: 'Change the value on the job ticket.' };
  }
  return {
    what: 'pourproof could not finish this proof, and that is a fault of pourproof, not of your drawing.',
    where: error instanceof Error ? `${error.name}: ${error.message}` : String(error),
    remedy: 'Please report it together with the drawing and the job.',
  };
}
