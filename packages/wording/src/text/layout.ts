import type { LengthUnit } from '@pourproof/plane';
import type { Severity } from '@pourproof/proof';

/** How the text is laid out. */
export interface ReportTextOptions {
  /** Longest line, in characters. */
  readonly columns: number;
  /** Sets off the word for a severity, in colour for example. */
  readonly mark?: (word: string, severity: Severity | 'clear') => string;
}

/** The same with everything said. */
export type Layout = Required<ReportTextOptions> & { readonly unit: LengthUnit };

/** The layout in the unit of a job; without a mark words stand as they are. */
export function layoutOf(options: ReportTextOptions, unit: LengthUnit): Layout {
  return { mark: (word) => word, ...options, unit };
}
