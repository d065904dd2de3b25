import { flagOf, type JobInput, type SettingKey } from '@pourproof/job';
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

/** Ways to a clear board, as `remedy` of `pourproof` gives them. */
export interface ToldRemedies {
  readonly before: {
    readonly verdict: Report['verdict'];
    readonly open: readonly FindingCode[];
    readonly costs: ToldCosts;
  };
  readonly remedies: readonly {
    readonly changes: readonly ToldChange[];
    readonly verdict: Report['verdict'];
    readonly remaining: readonly FindingCode[];
    readonly costs: ToldCosts;
    readonly look: {
      readonly areaMm2: number;
      readonly share: number;
      readonly shiftMm: number;
      readonly smallestHoleMm2: { readonly before: number | null; readonly after: number | null };
    };
  }[];
  readonly nearest: {
    readonly changes: readonly ToldChange[];
    readonly binds: readonly FindingCode[];
  } | null;
  readonly tried: number;
  readonly isCutShort: boolean;
}

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
          `${before.verdict.toUpperCase()}  ${artwork}: ${before.open.map((code) => titleOf(code)).join('; ')}.`,
          columns,
        );
  const end = told.isCutShort
    ? `The search ended early, after ${counted(told.tried, 'job')}: there may be better ways.`
    : `${counted(told.tried, 'job')} tried.${remedies.length > 0 ? ' Each way here was proved from scratch, and none is beaten by another in all costs.' : ''}`;
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

/** A change by flags: `depth 3mm → 3.4mm`. */
function changeText({ from, to }: ToldChange, { usual }: RemedyTextOptions): string {
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])] as SettingKey[];
  return keys
    .flatMap((key) => {
      const [before, after] = [
        from[key] === undefined ? usual(key) : valueText(key, from),
        valueText(key, to),
      ];
      // a value that is said now and was assumed before changes nothing
      return before === after ? [] : [`${flagOf(key) ?? key} ${before} → ${after}`];
    })
    .join(', ');
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

function lookText(look: ToldRemedies['remedies'][number]['look'], unit: LengthUnit): string {
  if (look.areaMm2 === 0) {
    return 'the drawing stays as it is.';
  }
  const { before, after } = look.smallestHoleMm2;
  const holes =
    before === null || after === null
      ? ''
      : `; smallest counter ${formatArea(before, unit)} before, ${formatArea(after, unit)} after`;
  return `${formatArea(look.areaMm2, unit)} of the drawing differ (${formatPercent(100 * look.share)} of it), outlines shift by ${formatLength(look.shiftMm, unit)} at most${holes}.`;
}

function titleOf(code: FindingCode): string {
  return `${findingTitle(code)} [${code}]`;
}
