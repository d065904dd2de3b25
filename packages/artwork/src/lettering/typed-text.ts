import { inchesFromMm, type LengthUnit } from '@pourproof/plane';

/** Digits behind the point of a length that was typed, mm or inches: 1/64 in is 0.015625 in. */
const DIGITS = { mm: 3, in: 6 } as const;

/** A length that a maker typed, with the digits that were typed: inches turned into millimetres have many more. */
export function typedText(mm: number, unit: LengthUnit): string {
  return `${Number((unit === 'mm' ? mm : inchesFromMm(mm)).toFixed(DIGITS[unit]))} ${unit}`;
}
