import type { LengthUnit } from '@pourproof/plane';
import type { FindingCode } from '../codes.ts';
import type { Measured } from '../measured.ts';
import type { Finding } from '../report/report.ts';

/** A finding in words: what, why it matters, and each way out with a number in it. */
export interface Advice {
  readonly headline: string;
  readonly why: string;
  readonly fixes: readonly string[];
}

/** One check of the proof: it measures, compares with a limit and puts the result into words. */
export interface Check {
  readonly code: FindingCode;
  /** A few plain words, the same on the sheet, on screen and in docs. */
  readonly title: string;
  /** The finding, or `null` when all is well. */
  readonly run: (measured: Measured) => Finding | null;
  /** The words for a finding of this check, lengths in the unit asked for. */
  readonly advise: (finding: Finding, unit: LengthUnit) => Advice;
}
