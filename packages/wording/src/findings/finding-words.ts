import type { Job } from '@pourproof/job';
import type { Finding, Fix } from '@pourproof/proof';
import type { AmountTexts } from './amount-texts.ts';

/**
 * Whom words are for: the unit of lengths, and the materials whose names are said. The job that was vetted is
 * one.
 */
export type Reader = Pick<Job, 'units' | 'materials'>;

type FixOf<Do extends Fix['do']> = Extract<Fix, { readonly do: Do }>;

/** The words of each kind of way out that a finding may have. */
export type FixWords = {
  readonly [Do in Fix['do']]?: (fix: FixOf<Do>, reader: Reader) => string;
};

/** All words of one finding. */
export interface FindingWords {
  /** A few plain words, the same on the sheet, on screen and in docs. */
  readonly title: string;
  /** What was found, with its numbers, in one sentence; those of the finding as they are printed beside it. */
  readonly headline: (finding: Finding, reader: Reader, amounts: AmountTexts) => string;
  /** Why it matters. */
  readonly why: (finding: Finding) => string;
  readonly fixes: FixWords;
  /** Advice that is no way out by itself, said after those that are. */
  readonly advice?: (finding: Finding) => readonly string[];
  /** What a count of the finding counts, for one and for many. */
  readonly counted?: readonly [one: string, many: string];
  /** What follows the measured value, as `across the grain`. */
  readonly measuredHow?: (finding: Finding) => string;
}
