import { listOf, words } from './holds.ts';
import type { Rows } from './setting.ts';

/** What the maker answers for. */
export interface SeenToSettings {
  /**
   * Codes of findings whose way out is work at the bench that the maker has done or will do, and of cautions from reading the artwork
   * that the maker has looked at.
   */
  readonly seenTo: readonly string[];
}

/** Settings of what the maker answers for. */
export const SEEN_TO_SETTINGS = {
  seenTo: {
    isOfArtwork: true,
    // which codes there are is known where findings are made
    holds: listOf(
      words('the code of a finding or a notice'),
      'a list of codes of findings and notices, such as ["oil-in-wood"]',
    ),
    field: 'seenTo',
    absent: [],
    otherwise: 'none',
    group: 'output',
    takes: 'CODE',
    help: 'A finding that you have seen to at the bench, as oil-in-wood, or a caution from reading, as text-not-outlined; repeat it',
    label: 'Findings and cautions seen to, one a line',
    hint: 'Codes, as in “oil-in-wood”; tick them where they stand',
  },
} as const satisfies Rows<SeenToSettings>;
