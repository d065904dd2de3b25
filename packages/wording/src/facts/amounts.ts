import { inchesFromMm, type LengthUnit } from '@pourproof/plane';

/** Rounding of the logarithm of a step that is a power of ten. */
const WHOLE_DIGIT_TOL = 1e-9;
/** A share this near to 1 is all of it: rounding of sums. */
const ALL_REL_TOL = 1e-9;

/**
 * Prints a mass in grams, of something that there is, with the digits of the scale that weighs it in steps of `stepG`: what the scale does not show is
 * under its step, never nothing.
 */
export function formatMass(g: number, stepG: number): string {
  const digits = Math.max(0, Math.ceil(-Math.log10(stepG) - WHOLE_DIGIT_TOL));
  const text = g.toFixed(digits);
  return Number(text) === 0 ? `under ${stepG.toFixed(digits)} g` : `${text} g`;
}

/** Prints percent with one digit, never rounding what is not all to 100.0 nor what is not nothing to 0.0. */
export function formatPercent(percent: number): string {
  if (percent > 0 && percent < 0.05) {
    return 'under 0.1 %';
  }
  if (percent < 100 && percent >= 99.95) {
    return 'over 99.9 %';
  }
  return `${percent.toFixed(1)} %`;
}

/**
 * Prints what share `part` is of `whole`, in percent; 0 % of nothing. What rounding of sums leaves off or
 * adds to all of it is not told.
 */
export function formatShare(part: number, whole: number): string {
  const share = whole > 0 ? part / whole : 0;
  return formatPercent(100 * (Math.abs(share - 1) < ALL_REL_TOL ? 1 : share));
}

/** A speed as makers say it: whole millimetres or tenths of inches per minute. */
export function speedText(mmPerMin: number, unit: LengthUnit): string {
  return unit === 'mm'
    ? `${Math.round(mmPerMin)} mm/min`
    : `${Number(inchesFromMm(mmPerMin).toFixed(1))} in/min`;
}
