import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Finding, FindingPlace, FixOption, Report, Severity } from '@pourproof/proof';
import { adviceFor } from '@pourproof/proof';
import { sourceText } from '../source-text.ts';

/** A place of a finding under the label that marks it on the sheet. */
export interface MarkedPlace extends FindingPlace {
  /** Number of the finding and a letter for the place: `2c`; the number alone where there is one place. */
  readonly label: string;
}

/** A way to clear a finding: its words, and what the job would have to be. */
export interface FixEntry {
  readonly text: string;
  /** `null` where it is advice that no value of the job expresses. */
  readonly option: FixOption | null;
}

/** A finding in words. */
export interface FindingEntry {
  /** From 1, the gravest first. */
  readonly number: number;
  readonly code: string;
  readonly severity: Severity;
  readonly title: string;
  readonly headline: string;
  readonly why: string;
  readonly fixes: readonly FixEntry[];
  readonly measured: string;
  readonly limit: string;
  readonly places: readonly MarkedPlace[];
  readonly basis: readonly string[];
}

const GRAVITY: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

/** The findings of a report in words, the gravest first and otherwise in the order of the checks. */
export function findingEntries(report: Report, unit: LengthUnit): readonly FindingEntry[] {
  return report.findings
    .toSorted((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity])
    .map((finding, index) => entryOf(finding, index + 1, unit));
}

function entryOf(finding: Finding, number: number, unit: LengthUnit): FindingEntry {
  const { title, headline, why, fixes } = adviceFor(finding, unit);
  return {
    number,
    code: finding.code,
    severity: finding.severity,
    title,
    headline,
    why,
    fixes: fixes.map((text, k) => ({ text, option: finding.fix.options[k] ?? null })),
    measured: quantity(finding.measured, unit),
    limit: quantity(finding.limit, unit),
    places: finding.where.map((place, k) => ({
      ...place,
      label: finding.where.length === 1 ? `${number}` : `${number}${letters(k)}`,
    })),
    basis: [...new Set(finding.because)].map(sourceText),
  };
}

function quantity({ value, unit }: Finding['measured'], lengthUnit: LengthUnit): string {
  const [first = '', ...rest] = unit.split(' ');
  return [amountText(value, first, lengthUnit), ...rest].join(' ');
}

function amountText(value: number, unit: string, lengthUnit: LengthUnit): string {
  switch (unit) {
    case 'mm':
      return formatLength(value, lengthUnit);
    case 'mm²':
      return formatArea(value, lengthUnit);
    case '%':
      return `${Math.round(value)} %`;
    default:
      return `${Number(value.toFixed(2))} ${unit}`;
  }
}

/** a … z, aa, ab, … */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
