import { refusalOf, refusalText, type Source } from 'pourproof';
import { UsageError } from './usage-error.ts';

/**
 * The message for an error that the maker can fix; `null` for any other, which is a fault of pourproof.
 *
 * @param source what was being vetted, if anything was
 */
export function messageOf(error: unknown, source?: Source): string | null {
  if (error instanceof UsageError) {
    return `pourproof: ${error.message}\n  What to do: ${error.remedy}\n`;
  }
  const refusal = refusalOf(error, source);
  return refusal === null ? null : `pourproof: ${refusalText(refusal)}\n`;
}
