import type { FindingCode } from '../codes.ts';
import type { Measured } from '../measured.ts';
import type { Finding } from '../report/finding-schema.ts';

/** One check: it measures and compares with a limit. Its words are in the package `wording`. */
export interface Check {
  readonly code: FindingCode;
  /** The finding, or `null` when all is well. */
  readonly run: (measured: Measured) => Finding | null;
}
