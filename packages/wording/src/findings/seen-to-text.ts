import { FIX_WORK } from '@pourproof/proof';
import type { FindingEntry } from './finding-entries.ts';

/** A finding that the maker has seen to, in one line: what it is, and the work that answers for it. */
export function seenToText({ title, severity, fixes }: FindingEntry): string {
  const work = fixes.flatMap(({ text, fix }) =>
    fix !== null && ['bench', 'look'].includes(FIX_WORK[fix.do]) ? [text] : [],
  );
  return `${title} (${severity}). ${work.join(' ')}`;
}
