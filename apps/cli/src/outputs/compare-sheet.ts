import { type Compared, compareSheet } from '@pourproof/wording';
import { VERSION } from '../version.ts';

/** The page of small pictures of a comparison. */
export function compareSheetContent(compared: Compared): string {
  return compareSheet(compared, VERSION);
}
