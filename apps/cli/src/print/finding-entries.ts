import { formatLength, type LengthUnit, type Point } from '@pourproof/plane';
import { adviceFor, type Finding, type Report, type Severity, sourceText } from '@pourproof/proof';

/** A place of a finding with the label that marks it on the sheet and the overlay. */
export interface MarkedPlace {
  /** Number of the finding and a letter for the place: `2c`; the number alone where there is one place. */
  readonly label: string;
  /** In the artwork's own coordinates, mm. */
  readonly atMm: Point;
}

/** A finding in words, numbered as everywhere on paper. */
export interface FindingEntry {
  /** From 1, the gravest first. */
  readonly number: number;
  readonly code: string;
  readonly severity: Severity;
  readonly title: string;
  readonly headline: string;
  readonly why: string;
  readonly fixes: readonly string[];
  readonly measured: string;
  readonly limit: string;
  readonly places: readonly MarkedPlace[];
  readonly basis: readonly string[];
}

/** Sources named beside a finding. */
const MOST_SOURCES = 3;
const GRAVITY: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

/** The findings of a report in words, the gravest first and otherwise in the order of the checks. */
export function findingEntries(report: Report, unit: LengthUnit): readonly FindingEntry[] {
  return report.findings
    .toSorted((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity])
    .map((finding, k) => entryOf(finding, k + 1, unit));
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
    fixes,
    measured: quantity(finding.measured, unit),
    limit: quantity(finding.limit, unit),
    places: finding.where.map((place, k) => ({
      label: finding.where.length === 1 ? `${number}` : `${number}${letters(k)}`,
      atMm: place.atMm,
    })),
    basis: basisOf(finding),
  };
}

function basisOf({ because }: Finding): readonly string[] {
  const ids = [...new Set(because)];
  const shown = ids.slice(0, MOST_SOURCES).map(sourceText);
  return ids.length > shown.length
    ? [...shown, `${ids.length - shown.length} more (--json, docs/sources.md)`]
    : shown;
}

function quantity({ value, unit }: Finding['measured'], lengthUnit: LengthUnit): string {
  const [first = '', ...rest] = unit.split(' ');
  const amount = first === 'mm' ? formatLength(value, lengthUnit) : `${Number(value.toFixed(2))} ${first}`;
  return [amount, ...rest].join(' ');
}

/** a … z, aa, ab, … */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
