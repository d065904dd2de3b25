import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Amount, Finding } from '@pourproof/proof';

/** The measured value of a finding and its limit as they are printed, everywhere alike. */
export interface AmountTexts {
  readonly measured: string;
  readonly limit: string;
}

/** Values that differ by less are equal: rounding of sums. */
const EQUAL_REL_TOL = 1e-9;
/** No mass of a shop needs more. */
const MOST_DIGITS = 6;

/**
 * Both amounts of a finding with the digits that a shop can use. Where rounding would print them alike although they differ, the measured
 * one is said to be just over or just under the limit: so each number has the same digits wherever it is printed, and the reason still
 * shows.
 *
 * @param counted what a count counts, for one and for many
 */
export function amountTexts(
  { measured, limit }: Pick<Finding, 'measured' | 'limit'>,
  lengthUnit: LengthUnit,
  counted?: readonly [one: string, many: string],
): AmountTexts {
  const larger = Math.max(Math.abs(measured.value), Math.abs(limit.value));
  const text = (amount: Amount): string => amountText(amount, { lengthUnit, larger, counted });
  const said = besideLimit(text(measured), measured.value, { text: text(limit), value: limit.value });
  return {
    // a share that is not all is not told as all
    measured: measured.unit === '%' ? besideLimit(said, measured.value, ALL) : said,
    limit: text(limit),
  };
}

const ALL = { text: '100 %', value: 100 };

/** A value as printed, with `just over` or `just under` before it where it prints as its limit does and is not the same. */
export function besideLimit(
  text: string,
  value: number,
  limit: { readonly text: string; readonly value: number },
): string {
  const isEqual =
    Math.abs(value - limit.value) <= EQUAL_REL_TOL * Math.max(Math.abs(value), Math.abs(limit.value));
  return text !== limit.text || isEqual ? text : `just ${value > limit.value ? 'over' : 'under'} ${text}`;
}

interface Digits {
  readonly lengthUnit: LengthUnit;
  /** The larger of the two values, which decides how many digits both show. */
  readonly larger: number;
  readonly counted: readonly [one: string, many: string] | undefined;
}

function amountText({ value, unit }: Amount, { lengthUnit, larger, counted }: Digits): string {
  switch (unit) {
    case 'mm':
      return formatLength(value, lengthUnit);
    case 'mm²':
      return formatArea(value, lengthUnit);
    case '%':
      return `${trimmed(value, larger < 10 ? 1 : 0)} %`;
    case 'g':
      return `${value.toFixed(massDigits(value, larger))} g`;
    case 'h':
    case '°C':
      return `${trimmed(value, 1)} ${unit}`;
    case 'ΔE00':
      return `${trimmed(value, 0)} ${unit}`;
    case '1':
      return counted === undefined ? `${value}` : `${value} ${counted[value === 1 ? 0 : 1]}`;
  }
}

/** Digits of a mass beside its limit; one that is hardly any shows its first one, never nothing. */
function massDigits(value: number, larger: number): number {
  const digits = larger < 10 ? 2 : larger < 100 ? 1 : 0;
  const first = value > 0 ? Math.ceil(-Math.log10(value)) : 0;
  return value * 10 ** digits < 0.5 ? Math.min(Math.max(digits, first), MOST_DIGITS) : digits;
}

function trimmed(value: number, digits: number): string {
  return `${Number(value.toFixed(digits))}`;
}
