export { CAUTION_WORDS } from './advice/caution-words.ts';
export { LEVELLING_WORDS } from './advice/levelling-words.ts';
export { type BidiPart, bidiParts } from './bidi-parts.ts';
export { calendarFile } from './calendar/calendar-file.ts';
export { compareCsv } from './compare/compare-csv.ts';
export { compareSheet } from './compare/compare-sheet.ts';
export { compareSummary, type SettingSummary, type ValueSummary } from './compare/compare-summary.ts';
export { compareText } from './compare/compare-text.ts';
export type { Compared, ToldRow } from './compare/compared.ts';
export { type CustomerOptions, customerHtml } from './customer/customer-html.ts';
export { colourName } from './facts/colour-name.ts';
export { cutSentences } from './facts/cut-sentences.ts';
export type { Fact } from './facts/fact.ts';
export { GRADE_WORDS } from './facts/grade-words.ts';
export { jobFacts } from './facts/job-facts.ts';
export { measureFacts } from './facts/measure-facts.ts';
export { notAsDrawn, type ToldNotice } from './facts/reader-notices.ts';
export { resinFacts } from './facts/resin-facts.ts';
export { bitsOfRounds, roundFacts } from './facts/round-facts.ts';
export { VERDICT_WORDS } from './facts/verdict-words.ts';
export { workFacts } from './facts/work-facts.ts';
export {
  type FindingEntry,
  type FixEntry,
  findingEntries,
  type MarkedPlace,
} from './findings/finding-entries.ts';
export type { Reader } from './findings/finding-words.ts';
export { findingTitle } from './findings/words-of-finding.ts';
export { OUTPUT_MARK } from './output-mark.ts';
export type { PaperOptions } from './placement/paper-pages.ts';
export { jobChecksum, placementHtml } from './placement/placement-html.ts';
export { type RemedyTextOptions, remedyText, type ToldRemedies } from './remedy/remedy-text.ts';
export { gradeSize } from './sheet/levelling-figure.ts';
export { overlaySvg } from './sheet/overlay.ts';
export { sheetHtml } from './sheet/sheet.ts';
export { sourceText } from './source-text.ts';
export type { ReportTextOptions } from './text/layout.ts';
export { noticePlaceText } from './text/notice-text.ts';
export { reportText } from './text/report-text.ts';
export { screenText } from './text/screen-text.ts';
export { wrap } from './text/wrap.ts';
export type { Vetted } from './vetted.ts';
