import { inchesFromMm, type LengthUnit } from '@pourproof/plane';

/** Digits after the point of typed lengths: 1 µm, and a ten-thousandth of an inch. */
const DIGITS: Readonly<Record<LengthUnit, number>> = { mm: 3, in: 4 };
/** Rounding of a sum of decimals, in units of the last digit, that does not count as more. */
const WHOLE_DIGIT_TOL = 1e-6;

/** Which way a length is rounded: to the nearest digit, or so that it is never less or never more. */
export type Rounding = 'nearest' | 'up' | 'down';

/** The unit of a typed length; of another where nothing was typed. */
export function unitOf(typed: string | undefined, otherwise: LengthUnit): LengthUnit {
  if (typed === undefined) {
    return otherwise;
  }
  return /(?:in|inch|inches|["″”])\s*$/iu.test(typed) ? 'in' : 'mm';
}

/** A length in mm as a maker types it: `3.2mm`, `0.125in`. */
export function typedLength(mm: number, unit: LengthUnit, rounding: Rounding = 'nearest'): string {
  const steps = (unit === 'in' ? inchesFromMm(mm) : mm) * 10 ** DIGITS[unit];
  const whole = {
    nearest: Math.round,
    up: (value: number) => Math.ceil(value - WHOLE_DIGIT_TOL),
    down: (value: number) => Math.floor(value + WHOLE_DIGIT_TOL),
  }[rounding](steps);
  return `${Number((whole / 10 ** DIGITS[unit]).toFixed(DIGITS[unit]))}${unit}`;
}
