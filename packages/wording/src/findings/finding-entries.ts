import type { LengthUnit } from '@pourproof/plane';
import type { Amount, Finding, FindingCode, FindingPlace, Fix, Report, Severity } from '@pourproof/proof';
import { sourceText } from '../source-text.ts';
import { amountTexts } from './amount-texts.ts';
import type { Reader } from './finding-words.ts';
import { placeText } from './place-text.ts';
import { droppedTexts, triedText, untriedTexts } from './tried-text.ts';
import { wordsOfFinding } from './words-of-finding.ts';

/** A place of a finding under the label that marks it on the sheet. */
export interface MarkedPlace extends FindingPlace {
  /** Number of the finding and a letter for the place: `2c`; the number alone where there is one place. */
  readonly label: string;
  /** What it is a part of, and how large that is. */
  readonly text: string;
}

/** A way to clear a finding: its words, and what it does. */
export interface FixEntry {
  readonly text: string;
  /** `null` where it is advice and no way out by itself. */
  readonly fix: Fix | null;
}

/** A finding in words. */
export interface FindingEntry {
  /** From 1, the gravest first; what has been seen to comes last. */
  readonly number: number;
  /** Names it among the findings of a report: its code, with its round where it has one. */
  readonly id: string;
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly title: string;
  readonly headline: string;
  readonly why: string;
  readonly fixes: readonly FixEntry[];
  readonly measured: string;
  readonly limit: string;
  readonly places: readonly MarkedPlace[];
  readonly basis: readonly string[];
  /** Whether the maker has seen to it; `null` where that is no cure. */
  readonly seenTo: boolean | null;
}

const GRAVITY: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

/**
 * The findings of a report in words, the gravest first and otherwise in the order of the checks; what has been seen to comes last.
 *
 * @param reader the job that was vetted, for its unit of lengths and the names of its materials
 * @example
 * for (const { severity, title, headline, fixes } of findingEntries(report, job)) …
 */
export function findingEntries(report: Pick<Report, 'findings'>, reader: Reader): readonly FindingEntry[] {
  return report.findings
    .toSorted((a, b) => rank(a) - rank(b))
    .map((finding, index) => entryOf(finding, index + 1, reader));
}

function rank({ severity, seenTo }: Finding): number {
  return GRAVITY[severity] + (seenTo === true ? 3 : 0);
}

function entryOf(finding: Finding, number: number, reader: Reader): FindingEntry {
  const words = wordsOfFinding(finding.code);
  const how = words.measuredHow?.(finding) ?? '';
  const amounts = amountTexts(finding, reader.units, words.counted);
  const amount = (value: number): string =>
    amountTexts({ ...finding, measured: { ...finding.measured, value } }, reader.units, words.counted)
      .measured;
  return {
    number,
    id: finding.round === undefined ? finding.code : `${finding.code}-round-${finding.round}`,
    code: finding.code,
    severity: finding.severity,
    title: `${words.title}${finding.round === undefined ? '' : `, round ${finding.round}`}`,
    headline: words.headline(finding, reader, amounts),
    why: words.why(finding),
    fixes: [
      ...finding.fix.options.map((fix) => ({ text: triedText(finding, fix, reader, amount), fix })),
      ...[
        ...droppedTexts(finding, reader),
        ...untriedTexts(finding, reader),
        ...(words.advice?.(finding) ?? []),
      ].map((text) => ({ text, fix: null })),
    ],
    measured: how === '' ? amounts.measured : `${amounts.measured} ${how}`,
    limit: amounts.limit,
    places: finding.where.map((place, k) => {
      const label = finding.where.length === 1 ? `${number}` : `${number}${letters(k)}`;
      return new Marked(place, label, finding.limit, reader.units);
    }),
    basis: [...new Set(finding.because)].map(sourceText),
    seenTo: finding.seenTo ?? null,
  };
}

/** Says what its place does, and is put into words when it is asked: a large drawing has thousands of places, of which a reader opens a few. */
class Marked implements MarkedPlace {
  readonly label: string;
  readonly #place: FindingPlace;
  readonly #limit: Amount;
  readonly #unit: LengthUnit;

  constructor(place: FindingPlace, label: string, limit: Amount, unit: LengthUnit) {
    this.label = label;
    this.#place = place;
    this.#limit = limit;
    this.#unit = unit;
  }

  get text(): string {
    return placeText(this.#place, this.#unit, this.#limit);
  }

  get atMm(): FindingPlace['atMm'] {
    return this.#place.atMm;
  }

  get outline(): FindingPlace['outline'] {
    return this.#place.outline;
  }

  get what(): FindingPlace['what'] {
    return this.#place.what;
  }

  get lengthMm(): number | undefined {
    return this.#place.lengthMm;
  }

  get widthMm(): number | undefined {
    return this.#place.widthMm;
  }

  get areaMm2(): number | undefined {
    return this.#place.areaMm2;
  }
}

/** a … z, aa, ab, … */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
