import { refusalOf } from 'pourproof';
import { fieldName } from './field-name.ts';

/** What is wrong and what to do in one line, settings by their fields; `null` for an error that is a fault of pourproof. */
export function refusalLine(error: unknown): string | null {
  const refusal = refusalOf(error, undefined, fieldName);
  return refusal === null ? null : [refusal.what, refusal.remedy].filter((part) => part !== '').join(' ');
}
