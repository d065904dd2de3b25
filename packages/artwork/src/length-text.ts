import { inchesFromMm, type LengthUnit } from '@pourproof/plane';

/** Digits of a length in a sentence: enough to find its place with a rule. */
const DIGITS = 3;

/** A length in a sentence: `0.25 mm`, `0.00984 in`. */
export function lengthText(mm: number, unit: LengthUnit, digits: number = DIGITS): string {
  return `${Number((unit === 'mm' ? mm : inchesFromMm(mm)).toPrecision(digits))} ${unit}`;
}

/** Width and height in a sentence: `80 mm × 60 mm`. */
export function sizeText(widthMm: number, heightMm: number, unit: LengthUnit): string {
  return [widthMm, heightMm].map((mm) => lengthText(mm, unit, DIGITS + 1)).join(' × ');
}
