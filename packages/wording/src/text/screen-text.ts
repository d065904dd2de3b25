import { bitSize, type Job } from '@pourproof/job';
import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report, Severity } from '@pourproof/proof';
import { formatMass } from '../facts/amounts.ts';
import { colourName } from '../facts/colour-name.ts';
import { formatMinutes } from '../facts/cutter-facts.ts';
import { notAsDrawn, noticesSeenTo, otherNotices } from '../facts/reader-notices.ts';
import { shopValues, usualValues } from '../facts/usual-values.ts';
import { type FindingEntry, findingEntries } from '../findings/finding-entries.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import type { Vetted } from '../vetted.ts';
import { bestWay } from './best-way.ts';
import { type Layout, layoutOf, type ReportTextOptions } from './layout.ts';
import { noticeText } from './notice-text.ts';
import { takenLines } from './taken-lines.ts';
import { verdictLines } from './verdict-lines.ts';
import { wrap } from './wrap.ts';

/** Rows of a plain terminal, less one for the prompt. */
const SCREEN_ROWS = 23;
/** Cautions from reading that are told before the rest is counted. */
const MAX_LEFT_OUT = 3;
/** One line on what can hurt; `--full` and the sheet have the whole texts. */
const CARE = 'dust mask, extraction, gloves, fresh air, small cups; data sheets first.';

const INDENT = '   ';

/**
 * How much is said of a finding: its title in a list of others, its title and best way out, its numbers and
 * first place too, or a sentence.
 */
type Detail = 'named' | 'title' | 'numbers' | 'sentence';

/** How much is said of everything: a detail for each finding, and all usual values or a count of most. */
interface Extent {
  readonly details: readonly Detail[];
  readonly isUsualWhole: boolean;
}

/**
 * The answer on one screen: the verdict, what was left out, each finding with its best way out, what to mix,
 * the time, the cautions in a line. Of findings and usual values it says as much as fits, of the gravest
 * findings most; {@link reportText} says all.
 *
 * @param options a narrow terminal gets more rows, none wider than its columns
 */
export function screenText(vetted: Vetted, options: ReportTextOptions): string {
  const layout = layoutOf(options, vetted.job.units);
  const all = findingEntries(vetted.report, vetted.job);
  const entries = all.filter(({ seenTo }) => seenTo !== true);
  let best: Extent = {
    details: entries.map(({ severity }) => (severity === 'stop' ? 'title' : 'named')),
    isUsualWhole: false,
  };
  for (const more of upgrades(entries)) {
    const next = more(best);
    if (screenLines(vetted, entries, next, layout).length <= SCREEN_ROWS) {
      best = next;
    }
  }
  return `${screenLines(vetted, entries, best, layout).join('\n')}\n`;
}

/** What may be said beyond the least, the most useful first. */
function upgrades(entries: readonly FindingEntry[]): readonly ((extent: Extent) => Extent)[] {
  const tell =
    (at: number, detail: Detail) =>
    ({ details, ...rest }: Extent): Extent => ({
      ...rest,
      details: details.map((each, k) => (k === at ? detail : each)),
    });
  const each = (detail: Detail, ...severities: readonly Severity[]): ((extent: Extent) => Extent)[] =>
    entries.flatMap(({ severity }, k) => (severities.includes(severity) ? [tell(k, detail)] : []));
  return [
    ...each('title', 'caution'),
    ...each('numbers', 'stop'),
    ...each('title', 'note'),
    (extent) => ({ ...extent, isUsualWhole: true }),
    ...each('numbers', 'caution', 'note'),
    ...each('sentence', 'stop', 'caution', 'note'),
  ];
}

function screenLines(
  { report, job }: Vetted,
  entries: readonly FindingEntry[],
  { details, isUsualWhole }: Extent,
  layout: Layout,
): readonly string[] {
  const { columns } = layout;
  const isNamed = (_: FindingEntry, k: number): boolean => details[k] === 'named';
  const named = entries.filter(isNamed);
  const findings = [
    ...entries.flatMap((entry, k) =>
      isNamed(entry, k)
        ? []
        : findingLines(entry, entries.slice(0, k), details[k] ?? 'title', report, layout),
    ),
    ...(named.length === 0 ? [] : wrap(byCode(named).map(titlesText).join('; '), columns, 'Also   ')),
  ];
  return [
    ...verdictLines(report, layout),
    ...wrap(cutText(report, layout), columns),
    ...leftOutLines(report, layout),
    ...(findings.length === 0 ? [] : ['', ...findings]),
    ...seenToLines(report, job, columns),
    '',
    ...benchLines(report, columns),
    ...wrap(CARE, columns, 'Care   '),
    ...takenLines(shopValues(job), 'Shop   ', isUsualWhole, columns),
    ...takenLines(usualValues(job), 'Usual  ', isUsualWhole, columns),
    ...wrap(moreText(report), columns),
  ];
}

/** What will be cut, in one sentence. */
function cutText({ artwork, cut, rounds }: Report, { unit }: Layout): string {
  if (cut.areaMm2 === 0) {
    return `Nothing of the ${formatArea(artwork.areaMm2, unit)} drawn will be cut: no bit of the job fits anywhere in it.`;
  }
  const standing = formatArea(cut.leftStandingMm2, unit);
  const [left, top, right, bottom] = artwork.boundsMm;
  return [
    `${formatLength(right - left, unit)} × ${formatLength(bottom - top, unit)}`,
    `${formatArea(cut.areaMm2, unit)} to cut ${rounds === undefined ? '' : 'up to '}${bitSize(cut.maxDepthMm, unit)} deep`,
    ...(standing === formatArea(0, unit) ? [] : [`${standing} stays wood`]),
  ]
    .join('; ')
    .concat('.');
}

function leftOutLines(report: Report, { columns, unit }: Layout): readonly string[] {
  // what is not as drawn stands first: the verdict holds for the artwork as read
  const cautions = [
    ...notAsDrawn(report),
    ...otherNotices(report).filter(({ severity }) => severity === 'caution'),
  ];
  const more = cautions.length - MAX_LEFT_OUT;
  return [
    ...cautions
      .slice(0, MAX_LEFT_OUT)
      .flatMap((notice) => wrap(noticeText(notice, report, unit), columns, '  ! ')),
    ...(more > 0
      ? wrap(`${counted(more, 'more caution')} from reading the artwork: --full.`, columns, '  ! ')
      : []),
  ];
}

function findingLines(
  entry: FindingEntry,
  before: readonly FindingEntry[],
  detail: Detail,
  report: Report,
  { columns, mark, unit }: Layout,
): readonly string[] {
  const grade = `${entry.number}. ${entry.severity.toUpperCase()}\u00a0\u00a0`;
  const title = `${grade}${entry.title}  [${entry.code}]`;
  const largest = largestText(entry);
  const more = {
    named: [],
    title: [],
    numbers: wrap(
      `${entry.measured}, limit ${entry.limit}${largest === '' ? '' : `; ${largest}`}.`,
      columns,
      INDENT,
    ),
    sentence: wrap(`${entry.headline}${placeSentence(entry, report, unit)}`, columns, INDENT),
  };
  return [
    ...hanging(title, columns).map((line, k) =>
      k === 0 ? line.replace(/[A-Z]+/u, (word) => mark(word, entry.severity)) : line,
    ),
    ...more[detail],
    ...wayLines(entry, before, columns),
  ];
}

/** Lines of a text that starts at the edge; the others are indented. */
function hanging(text: string, columns: number): readonly string[] {
  const [first = '', ...rest] = wrap(text, columns);
  return rest.length === 0 ? [first] : [first, ...wrap(rest.join(' '), columns, INDENT)];
}

/** The best way out; where it is that of a finding before, its number is enough. */
function wayLines(entry: FindingEntry, before: readonly FindingEntry[], columns: number): readonly string[] {
  const { text, others } = bestWay(entry);
  if (text === null) {
    return [];
  }
  const same = before.find((each) => bestWay(each).text === text);
  const way = same === undefined ? text : `As for ${same.number}.`;
  return wrap(`${way}${others === 0 ? '' : ` (or\u00a0${others}\u00a0more)`}`, columns, `${INDENT}→ `);
}

/** The largest place, and how many there are: `largest of 33: stroke 9.30 mm long`; `''` where there is none. */
function largestText({ places }: FindingEntry): string {
  const [first] = places;
  return first === undefined
    ? ''
    : `${places.length > 1 ? `largest of ${places.length}: ` : ''}${first.text}`;
}

/** The same as a sentence, with its place from the left and top edges of the artwork. */
function placeSentence(entry: FindingEntry, report: Report, unit: LengthUnit): string {
  const [first] = entry.places;
  if (first === undefined) {
    return '';
  }
  const text = largestText(entry);
  const [left, top] = report.rulerOffsetMm;
  const at = `${formatLength(first.atMm[0] - left, unit)}, ${formatLength(first.atMm[1] - top, unit)}`;
  return ` ${text.charAt(0).toUpperCase()}${text.slice(1)} at ${at.replaceAll(' ', '\u00a0')}.`;
}

/** Findings of one code and grade, as of several rounds, are named once. */
function byCode(entries: readonly FindingEntry[]): readonly (readonly [FindingEntry, ...FindingEntry[]])[] {
  const groups = new Map<string, [FindingEntry, ...FindingEntry[]]>();
  for (const entry of entries) {
    const key = `${entry.code} ${entry.severity}`;
    const group = groups.get(key);
    if (group === undefined) {
      groups.set(key, [entry]);
    } else {
      group.push(entry);
    }
  }
  return [...groups.values()];
}

function titlesText([first, ...more]: readonly [FindingEntry, ...FindingEntry[]]): string {
  const { severity, title, code } = first;
  return more.length === 0
    ? titleText(first)
    : `${[first, ...more].map(({ number }) => `${number}.`).join('\u00a0')}\u00a0${severity}: ${title.replace(/, round \d+$/u, '')} [${code}]`;
}

function titleText({ number, severity, title, code }: FindingEntry): string {
  return `${number}.\u00a0${severity}: ${title} [${code}]`;
}

/** What the maker answers for, by name. */
function seenToLines(report: Report, job: Job, columns: number): readonly string[] {
  const seen = [
    ...findingEntries(report, job)
      .filter(({ seenTo }) => seenTo === true)
      .map(titleText),
    ...noticesSeenTo(report).map(({ code }) => `[${code}]`),
  ];
  return seen.length === 0 ? [] : wrap(`${seen.join('; ')}.`, columns, 'Seen to by you: ');
}

/** Grams and hours at the bench. */
function benchLines(report: Report, columns: number): readonly string[] {
  const { pour, cut } = report;
  if (cut.areaMm2 === 0) {
    return [];
  }
  const level = pour.schedule.findLast(({ step }) => step === 'level');
  const rounds = report.rounds?.length ?? 1;
  const time = [
    `${formatMinutes(cut.time.minutes)} of cutting${rounds > 1 ? ` in ${rounds} rounds` : ''}`,
    ...(cut.time.changeMinutes === undefined
      ? []
      : [`${formatMinutes(cut.time.changeMinutes)} to put in the bits`]),
    ...(level === undefined
      ? []
      : [
          level.earliest === undefined
            ? `${rounds > 1 ? 'last ' : ''}level ${Math.round(level.earliestHours)} h after the start at the earliest`
            : `${rounds > 1 ? 'last ' : ''}level from ${level.earliest} on`,
        ]),
  ];
  return [
    ...pour.colours.flatMap((colour) => wrap(mixText(colour, report), columns, 'Mix    ')),
    ...wrap(`${time.join('; ')}.`, columns, 'Time   '),
  ];
}

function mixText(colour: Report['pour']['colours'][number], { pour, rounds = [] }: Report): string {
  const mass = (grams: number): string => formatMass(grams, pour.stepG);
  const { cups, layers } = colour;
  const round = rounds.find(({ colours }) => colours.includes(colour.name))?.round;
  const name = `${colourName(
    colour.name,
    pour.colours.map((each) => each.name),
  )}${round === undefined ? '' : `, round ${round}`}: `;
  return [
    `${pour.colours.length > 1 ? name : ''}${mass(colour.massG)}, A ${mass(colour.partAG)} and B ${mass(colour.partBG)} by weight`,
    ...(colour.pigmentG > 0 ? [`pigment ${mass(colour.pigmentG)}`] : []),
    `${counted(cups.count, 'cup')}, ${counted(layers.count, 'layer')}${pour.boards > 1 ? `, for ${pour.boards} boards` : ''}.`,
  ].join('; ');
}

function moreText({ artwork, findings }: Report): string {
  const notes = artwork.notices.some(({ severity }) => severity === 'note');
  const parts = [
    ...(findings.length === 0 ? [] : ['reasons', 'all places and ways out']),
    'measures',
    'steps',
    'cautions',
    ...(notes ? ['notes from reading'] : []),
  ];
  return `--full adds ${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}.`;
}
