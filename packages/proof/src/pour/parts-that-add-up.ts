/** Amounts as a scale displays them, in whole steps. */
export interface PrintedParts {
  /** One per amount, g, a whole number of steps. */
  readonly partsG: readonly number[];
  /** Their sum, g: the exact sum rounded to a step. */
  readonly totalG: number;
  /** Reading after each part if the cup stays on the scale and only the empty cup was set to zero. */
  readonly runningG: readonly number[];
}

/**
 * Rounds amounts in g to the steps of a scale so that the printed parts add up to the printed total exactly.
 *
 * The total is rounded first; the steps that rounding down leaves over go to the largest remainders
 * (Hamilton's method), so every part is off by less than one step.
 *
 * @param amountsG 0 or more each
 * @param stepG smallest step of the scale, above 0
 * @throws {RangeError} when an amount is negative or not finite, or the step is not above 0
 */
export function partsThatAddUp(amountsG: readonly number[], stepG: number): PrintedParts {
  if (!(stepG > 0 && amountsG.every((amount) => amount >= 0 && Number.isFinite(amount)))) {
    throw new RangeError(
      `amounts ${amountsG.join(', ')} g must be 0 or more and the step ${stepG} g above 0`,
    );
  }
  const exact = amountsG.map((amount) => amount / stepG);
  const total = Math.round(exact.reduce((sum, steps) => sum + steps, 0));
  const steps = exact.map(Math.floor);
  const over = total - steps.reduce((sum, each) => sum + each, 0);
  const byRemainder = exact
    .map((value, k) => ({ k, remainder: value - Math.floor(value) }))
    .toSorted((a, b) => b.remainder - a.remainder || a.k - b.k);
  for (const { k } of byRemainder.slice(0, Math.max(0, over))) {
    steps[k] = (steps[k] as number) + 1;
  }
  let reading = 0;
  const running = steps.map((each) => {
    reading += each;
    return reading;
  });
  const grams = (count: number): number => asPrinted(count * stepG, stepG);
  return { partsG: steps.map(grams), totalG: grams(reading), runningG: running.map(grams) };
}

/** A number of steps is whole within this: rounding. */
const WHOLE_TOL = 1e-9;
/** No scale of a shop shows more decimal places. */
const MAX_DIGITS = 6;

/** Decimal places that a scale with this step shows. */
export function scaleDigits(stepG: number): number {
  let digits = 0;
  while (
    digits < MAX_DIGITS &&
    Math.abs(stepG * 10 ** digits - Math.round(stepG * 10 ** digits)) > WHOLE_TOL
  ) {
    digits++;
  }
  return digits;
}

/** The number nearest to the decimal that the scale shows. */
function asPrinted(grams: number, stepG: number): number {
  return Number(grams.toFixed(scaleDigits(stepG)));
}
