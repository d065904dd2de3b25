import { flagOf } from '@pourproof/job';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { CAUTION_WORDS } from '../advice/caution-words.ts';
import { cutSentences } from '../facts/cut-sentences.ts';
import type { Fact } from '../facts/fact.ts';
import { jobFacts } from '../facts/job-facts.ts';
import { measureFacts } from '../facts/measure-facts.ts';
import { notAsDrawn, noticesSeenTo, otherNotices, type ToldNotice } from '../facts/reader-notices.ts';
import { resinFacts } from '../facts/resin-facts.ts';
import { roundFacts } from '../facts/round-facts.ts';
import { shopValues, type UsualValue, usualValues } from '../facts/usual-values.ts';
import { workFacts } from '../facts/work-facts.ts';
import { type FindingEntry, findingEntries } from '../findings/finding-entries.ts';
import { seenToText } from '../findings/seen-to-text.ts';
import type { Vetted } from '../vetted.ts';
import { type Layout, layoutOf, type ReportTextOptions } from './layout.ts';
import { noticeText } from './notice-text.ts';
import { shortBasis } from './short-basis.ts';
import { verdictLines } from './verdict-lines.ts';
import { wrap } from './wrap.ts';

/** Places listed for one finding; the rest is counted and stands in the JSON report and the overlay. */
const MAX_PLACES = 6;
/** Below this many columns a table would leave its remarks no room: each stands below its line. */
const TABLE_COLUMNS = 60;

/**
 * The whole answer as text to read in a terminal, the verdict first.
 *
 * @example
 * console.log(reportText(await vet(source, job), { columns: 80 }));
 */
export function reportText({ report, job }: Vetted, options: ReportTextOptions): string {
  const unit = job.units;
  const layout = layoutOf(options, unit);
  const { columns } = layout;
  const entries = findingEntries(report, job);
  return [
    ...verdictLines(report, layout),
    '',
    ...section('Not as drawn', noticeLines(notAsDrawn(report), report, layout)),
    ...wrap(cutSentences(report, unit).join(' '), columns),
    '',
    ...entries
      .filter(({ seenTo }) => seenTo !== true)
      .flatMap((entry) => findingLines(entry, report, layout)),
    ...section('Seen to by you', [
      ...entries
        .filter(({ seenTo }) => seenTo === true)
        .flatMap((entry) => wrap(`${seenToText(entry)} [${entry.code}]`, columns, `  ${entry.number}. `)),
      ...noticeLines(noticesSeenTo(report), report, layout),
    ]),
    ...section('The job', factLines(jobFacts(job), columns)),
    ...section('Measures', factLines(measureFacts(report, unit), columns)),
    ...section('Rounds', factLines(roundFacts(report, unit), columns)),
    ...section('Resin', factLines(resinFacts(report, unit), columns)),
    ...section('The work', factLines(workFacts(report), columns)),
    ...section('From reading the artwork', [
      ...noticeLines(otherNotices(report), report, layout),
      ...(report.artwork.notices.some(({ seenTo }) => seenTo === false)
        ? wrap(
            'A caution from reading that is as you mean it no longer counts with --seen-to CODE.',
            columns,
            '  ',
          )
        : []),
    ]),
    ...section(
      'Take care',
      Object.values(CAUTION_WORDS).flatMap((caution) => wrap(caution, columns, '  - ')),
    ),
    ...(job.shop === null
      ? []
      : section(`Not given, so taken from ${job.shop.name}`, valueLines(shopValues(job), columns))),
    ...section('Not given, so taken as usual', valueLines(usualValues(job), columns)),
  ].join('\n');
}

function findingLines(
  entry: FindingEntry,
  report: Report,
  { columns, mark, unit }: Layout,
): readonly string[] {
  const part = (name: string, text: string): string[] => wrap(text, columns, `   ${name.padEnd(9)}`);
  return [
    ...wrap(
      `${entry.title}  [${entry.code}]`,
      columns,
      `${entry.number}. ${entry.severity.toUpperCase()}  `,
    ).map((line, k) => (k === 0 ? line.replace(/[A-Z]+/u, (word) => mark(word, entry.severity)) : line)),
    ...wrap(entry.headline, columns, '   '),
    ...part('measured', `${entry.measured}; the limit is ${entry.limit}`),
    ...part('where', placesText(entry, report, unit, columns)),
    ...part('why', entry.why),
    ...entry.fixes.flatMap((fix, k) => part(k === 0 ? 'way out' : 'or', fix.text)),
    ...part('basis', shortBasis(entry.basis).join('; ')),
    '',
  ];
}

function placesText({ places }: FindingEntry, report: Report, unit: LengthUnit, columns: number): string {
  const [left, top] = report.rulerOffsetMm;
  if (places.length === 0) {
    return 'no one place';
  }
  const shown = places
    .slice(0, MAX_PLACES)
    .map(({ label, text, atMm }) =>
      [`${label} ${text}`, `at ${formatLength(atMm[0] - left, unit)}, ${formatLength(atMm[1] - top, unit)}`]
        .map((part) => (columns < TABLE_COLUMNS ? part : part.replaceAll(' ', '\u00a0')))
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
  if (columns < TABLE_COLUMNS) {
    return facts.flatMap(({ name, value, remark }) => [
      ...wrap(`${name.trim()}: ${value}`, columns, '  '),
      ...(remark === '' ? [] : wrap(remark, columns, '    ')),
    ]);
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

function noticeLines(notices: readonly ToldNotice[], report: Report, { columns, unit }: Layout): string[] {
  return notices.flatMap((notice) =>
    wrap(`${notice.severity}: ${noticeText(notice, report, unit)}`, columns, '  - '),
  );
}

function valueLines(values: readonly UsualValue[], columns: number): string[] {
  const rows = values.map(({ key, value }): Fact => ({ name: flagOf(key) ?? key, value, remark: '' }));
  return factLines(rows, columns);
}
