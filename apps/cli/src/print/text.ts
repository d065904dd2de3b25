import { cautions } from '@pourproof/materials';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report, Severity } from '@pourproof/proof';
import {
  cutSentences,
  type Fact,
  type FindingEntry,
  findingEntries,
  jobFacts,
  measureFacts,
  resinFacts,
  VERDICT_WORDS,
  workFacts,
} from '@pourproof/wording';
import type { Vetted } from '../vetted.ts';
import { shortBasis } from './short-basis.ts';
import { wrap } from './wrap.ts';

const COLUMNS = 80;
/** Places listed for one finding; the rest is counted and stands in the JSON report and the overlay. */
const MOST_PLACES = 6;

/** The answer as text to read in a terminal, the verdict first; `isColoured` marks severities with colour as well. */
export function reportText({ report, job }: Vetted, isColoured: boolean): string {
  const unit = job.units;
  const entries = findingEntries(report, unit);
  const paint = isColoured ? painted : plain;
  return [
    ...wrap(verdictLine(report), COLUMNS, `${report.verdict.toUpperCase()}  `).map((line, k) =>
      k === 0 ? line.replace(/^\S+/u, (word) => paint(word, report.verdict)) : line,
    ),
    '',
    ...paragraphs(cutSentences(report, unit)),
    '',
    ...entries.flatMap((entry) => findingLines(entry, report, unit, paint)),
    ...section('The job', factLines(jobFacts(job))),
    ...section('Measures', factLines(measureFacts(report, unit))),
    ...section('Resin', factLines(resinFacts(report, unit))),
    ...(job.start === null ? [] : section('The work', factLines(workFacts(report)))),
    ...section('From reading the artwork', noticeLines(report, unit)),
    ...section(
      'Take care',
      Object.values(cautions).flatMap((caution) => wrap(caution.value, COLUMNS, '  - ')),
    ),
    ...defaultsLines(report),
  ].join('\n');
}

type Paint = (text: string, severity: Severity | 'clear') => string;

function plain(text: string): string {
  return text;
}

/** Bold with red, yellow, cyan or green of the terminal's own palette (ECMA-48 SGR). */
function painted(text: string, severity: Severity | 'clear'): string {
  const codes = { stop: 31, caution: 33, note: 36, clear: 32 };
  return `\u001b[1;${codes[severity]}m${text}\u001b[0m`;
}

function verdictLine(report: Report): string {
  const counts = (['stop', 'caution', 'note'] as const)
    .map((severity) => ({ severity, n: report.findings.filter((each) => each.severity === severity).length }))
    .filter(({ n }) => n > 0)
    .map(({ severity, n }) => `${n} ${n === 1 ? severity : `${severity}s`}`);
  const read = report.artwork.notices.filter(({ severity }) => severity === 'caution').length;
  if (read > 0) {
    counts.push(`${read} ${read === 1 ? 'caution' : 'cautions'} from reading the artwork`);
  }
  const words = VERDICT_WORDS[report.verdict];
  return `${report.artwork.file}: ${words}${counts.length > 0 ? ` (${counts.join(', ')})` : ''}.`;
}

function paragraphs(sentences: readonly string[]): string[] {
  return wrap(sentences.join(' '), COLUMNS);
}

function findingLines(entry: FindingEntry, report: Report, unit: LengthUnit, paint: Paint): string[] {
  const part = (name: string, text: string): string[] => wrap(text, COLUMNS, `   ${name.padEnd(9)}`);
  return [
    `${entry.number}. ${paint(entry.severity.toUpperCase(), entry.severity)}  ${entry.title}  [${entry.code}]`,
    ...wrap(entry.headline, COLUMNS, '   '),
    ...part('measured', `${entry.measured}; the limit is ${entry.limit}`),
    ...part('where', placesText(entry, report, unit)),
    ...part('why', entry.why),
    ...entry.fixes.flatMap((fix, k) => part(k === 0 ? 'way out' : 'or', fix.text)),
    ...part('basis', shortBasis(entry.basis).join('; ')),
    '',
  ];
}

function placesText({ places }: FindingEntry, report: Report, unit: LengthUnit): string {
  const [left, top] = report.artwork.boundsMm;
  if (places.length === 0) {
    return 'no single place';
  }
  const shown = places
    .slice(0, MOST_PLACES)
    .map(({ label, atMm }) =>
      `${label} ${formatLength(atMm[0] - left, unit)}, ${formatLength(atMm[1] - top, unit)}`.replaceAll(
        ' ',
        '\u00a0',
      ),
    );
  const more = places.length - shown.length;
  return `from the left and top edge of the artwork: ${shown.join('; ')}${more > 0 ? `; and ${more} more (--json, --overlay)` : ''}`;
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [title, ...lines, ''];
}

function factLines(facts: readonly Fact[]): string[] {
  if (facts.length === 0) {
    return [];
  }
  const nameWidth = Math.max(...facts.map((fact) => fact.name.length)) + 2;
  const valueWidth = Math.max(...facts.map((fact) => (fact.remark === '' ? 0 : fact.value.length))) + 2;
  return facts.flatMap(({ name, value, remark }) => {
    const start = `  ${name.padEnd(nameWidth)}`;
    return remark === ''
      ? wrap(value, COLUMNS, start)
      : wrap(remark, COLUMNS, `${start}${value.padEnd(valueWidth)}`);
  });
}

function noticeLines(report: Report, unit: LengthUnit): string[] {
  return report.artwork.notices.flatMap((notice) => {
    const [first] = notice.where;
    const place =
      first === undefined ? '' : ` (${placeText(first, unit)}${moreText(notice.where.length - 1)})`;
    return wrap(`${notice.severity}: ${notice.text}${place} [${notice.code}]`, COLUMNS, '  - ');
  });
}

function moreText(more: number): string {
  return more > 0 ? ` and ${more} more` : '';
}

type NoticePlace = Report['artwork']['notices'][number]['where'][number];

function placeText(place: NoticePlace, unit: LengthUnit): string {
  const parts = [
    place.element,
    place.line === undefined ? undefined : `line ${place.line}`,
    place.atMm === undefined
      ? undefined
      : `at ${formatLength(place.atMm[0], unit)}, ${formatLength(place.atMm[1], unit)}`,
    place.gapMm === undefined ? undefined : `gap ${formatLength(place.gapMm, unit)}`,
  ];
  return parts.filter((part) => part !== undefined).join(', ');
}

function defaultsLines(report: Report): string[] {
  if (report.defaults.length === 0) {
    return [];
  }
  return [...wrap(`Not given, so taken as usual: ${report.defaults.map(flagName).join(', ')}.`, COLUMNS), ''];
}

/** The flag that sets a key of the job: `sealHours` is `seal-hours`. */
function flagName(key: string): string {
  return key.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`);
}
