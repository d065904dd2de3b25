import type { SettingName } from '@pourproof/job';
import { refusalOf, refusalText, type Source } from 'pourproof';
import { UsageError } from './usage-error.ts';

/** What an error is about, besides what it says itself. */
export interface Told {
  /** What was being vetted, if anything was. */
  readonly source?: Source | undefined;
  /** What settings are called: flags where they were typed. */
  readonly name?: SettingName;
}

/** The message for an error that the maker can fix; `null` for any other, which is a fault of pourproof. */
export function messageOf(error: unknown, { source, name }: Told = {}): string | null {
  if (error instanceof UsageError) {
    return `pourproof: ${error.message}\n  What to do: ${error.remedy}\n`;
  }
  const refusal = refusalOf(error, source, name);
  return refusal === null ? null : `pourproof: ${refusalText(refusal)}\n`;
}
