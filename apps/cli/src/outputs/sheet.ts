import { sheetHtml } from '@pourproof/wording';
import type { Vetted } from 'pourproof';
import { VERSION } from '../version.ts';

/** The sheet to print, of all that was vetted. */
export function sheetContent(vetted: readonly Vetted[]): string {
  return sheetHtml(vetted, VERSION);
}
