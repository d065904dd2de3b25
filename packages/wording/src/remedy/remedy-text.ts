import { flagOf, type JobInput, SETTINGS, type SettingKey } from '@pourproof/job';
import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { FindingCode, Report } from '@pourproof/proof';
import { valueText } from '../compare/compared.ts';
import { formatPercent } from '../facts/amounts.ts';
import { formatMinutes } from '../facts/cutter-facts.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import { findingTitle } from '../findings/words-of-finding.ts';
import { wrap } from '../text/wrap.ts';

/** A change of a job: what differs, before and after. */
interface ToldChange {
  readonly from: JobInput;
  readonly to: JobInput;
}

interface ToldCosts {
  readonly minutes: number;
  readonly massG: number;
  readonly price: number | null;
  readonly hours: number;
}

type XY = readonly [number, number];

/** Ways to a clear board, as `remedy` of `pourproof` gives them. */
export interface ToldRemedies {
  readonly before: {
    readonly verdict: Report['verdict'];
    readonly open: readonly FindingCode[];
    readonly toClear: readonly FindingCode[];
    readonly costs: ToldCosts;
  };
  readonly remedies: readonly {
    readonly changes: readonly ToldChange[];
    readonly verdict: Report['verdict'];
    readonly remaining: readonly FindingCode[];
    readonly costs: ToldCosts;
    readonly look: {
      readonly areaMm2: number;
      readonly addedMm2: number;
      readonly removedMm2: number;
      readonly share: number;
      readonly sizeMm: { readonly before: XY; readonly after: XY };
      readonly shiftMm: number;
      readonly smallestHoleMm2: { readonly before: number | null; readonly after: number | null };
    };
  }[];
  readonly nearest: {
    readonly changes: readonly ToldChange[];
    readonly binds: readonly FindingCode[];
  } | null;
  readonly tried: number;
  readonly ended: 'all-tried' | 'stopped' | 'at-its-bound';
}

type Look = ToldRemedies['remedies'][number]['look'];

/** How it is laid out, and what the job was. */
export interface RemedyTextOptions {
  readonly columns: number;
  readonly unit: LengthUnit;
  readonly artwork: string;
  /** What was to be cleared. */
  readonly clear: 'stops' | 'cautions';
  /** The settled values of the settings that the job did not give, as they are typed. */
  readonly usual: (key: SettingKey) => string;
}

/** Ways to a clear board as text: each with what it changes, costs, leaves, and how it alters the look. */
export function remedyText(told: ToldRemedies, options: RemedyTextOptions): string {
  const { columns, artwork, clear } = options;
  const { before, remedies, nearest } = told;
  const lines =
    remedies.length > 0
      ? remedies.flatMap((each, k) => ['', ...remedyLines(each, k, before.costs, options)])
      : nearest === null
        ? [...wrap(nothingText(before.verdict, clear), columns)]
        : nearestLines(nearest, options);
  const head =
    nearest === null && remedies.length === 0
      ? []
      : wrap(
          `${before.verdict.toUpperCase()}  ${artwork}: ${before.toClear.map(titleOf).join('; ')}.`,
          columns,
        );
  const end =
    told.ended !== 'all-tried'
      ? `${told.ended === 'stopped' ? 'The search was stopped' : 'The search ended at its bound'} after ${counted(told.tried, 'job')}: there may be other ways, and better ones.`
      : `${counted(told.tried, 'job')} tried.${remedies.length > 0 ? ' Each way here was proved from scratch, and none is worse than another in every respect.' : ''}`;
  return `${[...head, ...lines, '', ...wrap(end.trim(), columns)].join('\n')}\n`;
}

function nothingText(verdict: Report['verdict'], clear: 'stops' | 'cautions'): string {
  return verdict === 'clear'
    ? 'Nothing to change: the job is clear.'
    : `Nothing to change: there is no ${clear === 'stops' ? 'stop' : 'stop or caution'} that a way out is sought for.`;
}

function nearestLines(
  { changes, binds }: NonNullable<ToldRemedies['nearest']>,
  options: RemedyTextOptions,
): readonly string[] {
  const { columns } = options;
  return [
    '',
    ...wrap(`Nothing that may be changed clears it. What binds: ${binds.map(titleOf).join('; ')}.`, columns),
    ...(changes.length === 0
      ? []
      : wrap(`Nearest: ${changes.map((each) => changeText(each, options)).join('; ')}.`, columns)),
  ];
}

function remedyLines(
  { changes, verdict, remaining, costs, look }: ToldRemedies['remedies'][number],
  k: number,
  before: ToldCosts,
  options: RemedyTextOptions,
): readonly string[] {
  const { columns, unit } = options;
  const indent = '   ';
  return [
    ...wrap(changes.map((each) => changeText(each, options)).join('; '), columns, `${k + 1}. `),
    ...wrap(`${costText(costs, before)}.`, columns, `${indent}costs  `),
    ...wrap(lookText(look, unit), columns, `${indent}look   `),
    ...wrap(
      `${verdict}${remaining.length === 0 ? '' : `: ${remaining.map(titleOf).join('; ')}`}.`,
      columns,
      `${indent}then   `,
    ),
  ];
}

/** A change by the flags that are typed for it, each with what was so far: `--depth 3.4mm (3mm so far)`. */
function changeText({ from, to }: ToldChange, { usual }: RemedyTextOptions): string {
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])] as SettingKey[];
  return keys
    .flatMap((key) => {
      const before = from[key] === undefined ? usual(key) : valueText(key, from);
      // a value that is said now and was assumed before changes nothing
      if (to[key] !== undefined && before === valueText(key, to)) {
        return [];
      }
      if (key === 'coupons') {
        return ['rows of your coupons with what they were cut with written in'];
      }
      return [`${typedText(key, to)}${before === '' ? '' : ` (${before} so far)`}`];
    })
    .join(', ');
}

function typedText(key: SettingKey, to: JobInput): string {
  const flag = `--${flagOf(key) ?? key}`;
  const value = to[key];
  if (value === undefined) {
    return `no ${flag}`;
  }
  const typed: unknown = SETTINGS[key].holds.typed(value as never);
  return [typed]
    .flat()
    .map((each) => `${flag} ${quoted(inFractions(String(each)))}`)
    .join(' ');
}

/** Lengths of a bit in whole 64ths as they are stamped on it. */
function inFractions(text: string): string {
  return text.replaceAll(/(?<![\d.])0?\.(\d+)in\b/gu, (decimal, digits: string) => {
    const parts = 64 * Number(`0.${digits}`);
    const by = [2, 4, 8, 16, 32, 64].find((each) => Number.isInteger((parts * each) / 64));
    return Number.isInteger(parts) && by !== undefined ? `${(parts * by) / 64}/${by}in` : decimal;
  });
}

/** As it is typed: in quotes where a shell would part it. */
function quoted(text: string): string {
  return /[\s,;"']/u.test(text) ? `"${text}"` : text;
}

/** What it costs, each with what it was where that differs. */
function costText(costs: ToldCosts, before: ToldCosts): string {
  const part = (now: string, was: string, what: string): string =>
    now === was ? `${now}${what}` : `${now}${what} (was ${was})`;
  const money = (price: number | null): string => (price === null ? '–' : price.toFixed(2));
  return [
    part(formatMinutes(costs.minutes), formatMinutes(before.minutes), ' of cutting'),
    part(`${costs.massG.toFixed(1)} g`, `${before.massG.toFixed(1)} g`, ' of mix'),
    ...(costs.price === null ? [] : [part(money(costs.price), money(before.price), ' in your money')]),
    part(`${Math.round(costs.hours)} h`, `${Math.round(before.hours)} h`, ' until it may be levelled'),
  ].join('; ');
}

/** A size that differs by less is that of wider strokes, not of a scaled artwork (our choice). */
const SCALED_SHARE = 0.1;

function lookText(look: Look, unit: LengthUnit): string {
  if (look.areaMm2 === 0) {
    return 'the drawing stays as it is.';
  }
  const { before, after } = look.sizeMm;
  const isScaled = [0, 1].some((k) => Math.abs((after[k] ?? 0) / (before[k] ?? 1) - 1) > SCALED_SHARE);
  return isScaled
    ? `${sizeText(after, unit)} instead of ${sizeText(before, unit)}${counterText(look, unit)}.`
    : `${areaText(look, unit)}; no outline moves by more than ${formatLength(look.shiftMm, unit)}${counterText(look, unit)}.`;
}

function sizeText([width, height]: XY, unit: LengthUnit): string {
  return `${formatLength(width, unit)} by ${formatLength(height, unit)}`;
}

/** What is carved more and less, beside all that was drawn. */
function areaText({ areaMm2, addedMm2, removedMm2, share }: Look, unit: LengthUnit): string {
  const drawnMm2 = areaMm2 / share;
  const part = (mm2: number): string => `${formatPercent((100 * mm2) / drawnMm2)} of its area`;
  const [added, removed] = [addedMm2, removedMm2].map((mm2) => mm2 >= LEAST_SHARE * drawnMm2);
  const all = `the drawing (${formatArea(drawnMm2, unit)})`;
  if (added === true && removed === true) {
    return `${all} gains ${part(addedMm2)} and loses ${part(removedMm2)}`;
  }
  return added === true
    ? `${all} gains ${part(addedMm2)}`
    : removed === true
      ? `${all} loses ${part(removedMm2)}`
      : `${all} keeps its area to a hundredth`;
}

/** Less of the area goes without saying (our choice). */
const LEAST_SHARE = 0.001;

function counterText({ smallestHoleMm2: { before, after } }: Look, unit: LengthUnit): string {
  if (before === null || after === null || formatArea(before, unit) === formatArea(after, unit)) {
    return '';
  }
  return `; the smallest counter has ${formatArea(after, unit)} instead of ${formatArea(before, unit)}`;
}

function titleOf(code: FindingCode): string {
  return `${findingTitle(code)} [${code}]`;
}
