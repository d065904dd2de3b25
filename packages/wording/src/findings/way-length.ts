import { formatLength, inchesFromMm, type LengthUnit, mmFromInches } from '@pourproof/plane';

/** Thousandths of an inch are what is printed. */
const STEPS_PER_INCH = 1000;
/** What rounding adds to a whole step is not another. */
const WHOLE_STEP_TOL = 1e-6;

/**
 * A length that has to be reached, as printed: never less than it is. Ways out in mm are whole hundredths
 * already.
 */
export function noLess(mm: number, unit: LengthUnit): string {
  return inSteps(mm, unit, (steps) => Math.ceil(steps - WHOLE_STEP_TOL));
}

/** A length that must not be passed, as printed: never more than it is. */
export function noMore(mm: number, unit: LengthUnit): string {
  return inSteps(mm, unit, (steps) => Math.floor(steps + WHOLE_STEP_TOL));
}

function inSteps(mm: number, unit: LengthUnit, whole: (steps: number) => number): string {
  return formatLength(
    unit === 'mm' ? mm : mmFromInches(whole(inchesFromMm(mm) * STEPS_PER_INCH) / STEPS_PER_INCH),
    unit,
  );
}
