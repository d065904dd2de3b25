import { ArtworkError } from '@pourproof/artwork';
import { JobError } from '@pourproof/job';
import { MeasureError } from '@pourproof/plane';
import { UsageError } from './usage-error.ts';

/**
 * The words for an error that the maker can put right, with the remedy; `null` for any other, which is a fault of pourproof.
 *
 * @param file what was being read, `''` before any file is
 */
export function messageOf(error: unknown, file: string): string | null {
  const prefix = file === '' ? 'pourproof: ' : `pourproof: ${file}: `;
  if (error instanceof ArtworkError) {
    const place =
      error.line === undefined
        ? ''
        : ` (line ${error.line}${error.column === undefined ? '' : `, column ${error.column}`})`;
    // some messages start with the file's name themselves
    const start = error.message.startsWith(`${file} `) ? 'pourproof: ' : prefix;
    return `${start}${unended(error.message)}${place}.\n  What to do: ${error.remedy}\n`;
  }
  if (error instanceof UsageError) {
    return `pourproof: ${error.message}\n  What to do: ${error.remedy}\n`;
  }
  if (error instanceof MeasureError || error instanceof JobError) {
    return `pourproof: ${error.message}\n`;
  }
  return null;
}

function unended(sentence: string): string {
  return sentence.endsWith('.') ? sentence.slice(0, -1) : sentence;
}
