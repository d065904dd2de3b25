import { flagOf, SETTING_KEYS } from '@pourproof/job';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report, Severity } from '@pourproof/proof';
import { CAUTION_WORDS } from '../advice/caution-words.ts';
import { cutSentences } from '../facts/cut-sentences.ts';
import type { Fact } from '../facts/fact.ts';
import { jobFacts } from '../facts/job-facts.ts';
import { measureFacts } from '../facts/measure-facts.ts';
import { resinFacts } from '../facts/resin-facts.ts';
import { VERDICT_WORDS } from '../facts/verdict-words.ts';
import { workFacts } from '../facts/work-facts.ts';
import { type FindingEntry, findingEntries } from '../findings/finding-entries.ts';
import { seenToText } from '../findings/seen-to-text.ts';
import type { Vetted } from '../vetted.ts';
import { shortBasis } from './short-basis.ts';
import { wrap } from './wrap.ts';

/** Places listed for one finding; the rest is counted and stands in the JSON report and the overlay. */
const MAX_PLACES = 6;

/** How the text is laid out. */
export interface ReportTextOptions {
  /** Longest line, in characters. */
  readonly columns: number;
  /** Sets off the word for a severity, in colour for example. */
  readonly mark?: (word: string, severity: Severity | 'clear') => string;
}

type Layout = Required<ReportTextOptions> & { readonly unit: LengthUnit };

/**
 * The answer as text to read in a terminal, the verdict first.
 *
 * @example
 * console.log(reportText(await vet(source, job), { columns: 80 }));
 */
export function reportText({ report, job }: Vetted, options: ReportTextOptions): string {
  const unit = job.units;
  const layout: Layout = { mark: (word) => word, ...options, unit };
  const { columns, mark } = layout;
  const entries = findingEntries(report, job);
  return [
    ...wrap(verdictLine(report), columns, `${report.verdict.toUpperCase()}  `).map((line, k) =>
      k === 0 ? line.replace(/^\S+/u, (word) => mark(word, report.verdict)) : line,
    ),
    '',
    ...wrap(cutSentences(report, unit).join(' '), columns),
    '',
    ...entries
      .filter(({ seenTo }) => seenTo !== true)
      .flatMap((entry) => findingLines(entry, report, layout)),
    ...section(
      'Seen to by you',
      entries
        .filter(({ seenTo }) => seenTo === true)
        .flatMap((entry) => wrap(`${seenToText(entry)} [${entry.code}]`, columns, `  ${entry.number}. `)),
    ),
    ...section('The job', factLines(jobFacts(job), columns)),
    ...section('Measures', factLines(measureFacts(report, unit), columns)),
    ...section('Resin', factLines(resinFacts(report, unit), columns)),
    ...(job.start === null ? [] : section('The work', factLines(workFacts(report), columns))),
    ...section('From reading the artwork', noticeLines(report, layout)),
    ...section(
      'Take care',
      Object.values(CAUTION_WORDS).flatMap((caution) => wrap(caution, columns, '  - ')),
    ),
    ...defaultsLines(report, columns),
  ].join('\n');
}

function verdictLine(report: Report): string {
  const open = report.findings.filter((finding) => finding.seenTo !== true);
  const counts = (['stop', 'caution', 'note'] as const)
    .map((severity) => ({ severity, n: open.filter((each) => each.severity === severity).length }))
    .filter(({ n }) => n > 0)
    .map(({ severity, n }) => `${n} ${n === 1 ? severity : `${severity}s`}`);
  const read = report.artwork.notices.filter(({ severity }) => severity === 'caution').length;
  if (read > 0) {
    counts.push(`${read} ${read === 1 ? 'caution' : 'cautions'} from reading the artwork`);
  }
  const seenTo = report.findings.length - open.length;
  if (seenTo > 0) {
    counts.push(`${seenTo} seen to by you`);
  }
  const words = VERDICT_WORDS[report.verdict];
  return `${report.artwork.file}: ${words}${counts.length > 0 ? ` (${counts.join(', ')})` : ''}.`;
}

function findingLines(
  entry: FindingEntry,
  report: Report,
  { columns, mark, unit }: Layout,
): readonly string[] {
  const part = (name: string, text: string): string[] => wrap(text, columns, `   ${name.padEnd(9)}`);
  return [
    `${entry.number}. ${mark(entry.severity.toUpperCase(), entry.severity)}  ${entry.title}  [${entry.code}]`,
    ...wrap(entry.headline, columns, '   '),
    ...part('measured', `${entry.measured}; the limit is ${entry.limit}`),
    ...part('where', placesText(entry, report, unit)),
    ...part('why', entry.why),
    ...entry.fixes.flatMap((fix, k) => part(k === 0 ? 'way out' : 'or', fix.text)),
    ...part('basis', shortBasis(entry.basis).join('; ')),
    '',
  ];
}

function placesText({ places }: FindingEntry, report: Report, unit: LengthUnit): string {
  const [left, top] = report.rulerOffsetMm;
  if (places.length === 0) {
    return 'no one place';
  }
  const shown = places
    .slice(0, MAX_PLACES)
    .map(({ label, text, atMm }) =>
      [`${label} ${text}`, `at ${formatLength(atMm[0] - left, unit)}, ${formatLength(atMm[1] - top, unit)}`]
        .map((part) => part.replaceAll(' ', '\u00a0'))
        .join(' '),
    );
  const more = places.length - shown.length;
  return `from the left and top edges of the artwork: ${shown.join('; ')}${more > 0 ? `; and ${more} more (--json, --overlay)` : ''}`;
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [title, ...lines, ''];
}

function factLines(facts: readonly Fact[], columns: number): string[] {
  if (facts.length === 0) {
    return [];
  }
  const nameWidth = Math.max(...facts.map((fact) => fact.name.length)) + 2;
  const valueWidth = Math.max(...facts.map((fact) => (fact.remark === '' ? 0 : fact.value.length))) + 2;
  return facts.flatMap(({ name, value, remark }) => {
    const start = `  ${name.padEnd(nameWidth)}`;
    return remark === ''
      ? wrap(value, columns, start)
      : wrap(remark, columns, `${start}${value.padEnd(valueWidth)}`);
  });
}

function noticeLines(report: Report, { columns, unit }: Layout): string[] {
  return report.artwork.notices.flatMap((notice) => {
    const [first] = notice.where;
    const place =
      first === undefined ? '' : ` (${placeText(first, report, unit)}${moreText(notice.where.length - 1)})`;
    return wrap(`${notice.severity}: ${notice.text}${place} [${notice.code}]`, columns, '  - ');
  });
}

function moreText(more: number): string {
  return more > 0 ? ` and ${more} more` : '';
}

type NoticePlace = Report['artwork']['notices'][number]['where'][number];

function placeText(place: NoticePlace, { rulerOffsetMm: [left, top] }: Report, unit: LengthUnit): string {
  const parts = [
    place.element,
    place.line === undefined ? undefined : `line ${place.line}`,
    place.atMm === undefined
      ? undefined
      : `at ${formatLength(place.atMm[0] - left, unit)}, ${formatLength(place.atMm[1] - top, unit)}`,
    place.gapMm === undefined ? undefined : `gap ${formatLength(place.gapMm, unit)}`,
  ];
  return parts.filter((part) => part !== undefined).join(', ');
}

function defaultsLines(report: Report, columns: number): string[] {
  if (report.defaults.length === 0) {
    return [];
  }
  const flags = SETTING_KEYS.filter((key) => report.defaults.includes(key)).map((key) => flagOf(key) ?? key);
  return [...wrap(`Not given, so the usual values apply: ${flags.join(', ')}.`, columns), ''];
}
