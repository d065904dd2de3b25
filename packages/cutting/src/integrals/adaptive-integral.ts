/** A number with a bound on its error, in its own unit. */
export interface Bounded {
  readonly value: number;
  readonly error: number;
}

/**
 * Gauss's rules with four and with eight points on −1 … 1: nodes and weights (from memory; a test integrates
 * powers up to x¹⁵).
 */
const FOUR = [0.3399810435848563, 0.6521451548625461, 0.8611363115940526, 0.3478548451374538];
const EIGHT = [
  0.1834346424956498, 0.362683783378362, 0.525532409916329, 0.3137066458778873, 0.7966664774136267,
  0.2223810344533745, 0.9602898564975363, 0.1012285362903763,
];

/** Halvings before a stretch is taken as it is: its difference then counts as error. */
const MAX_HALVINGS = 24;

/**
 * Integral of f over a … b with an estimate of its error: stretches are halved until Gauss's rules with four
 * and with eight points differ by no more than their share of `tolerance`, or by rounding. The sum of the
 * differences is the error: far above the true one where f is smooth.
 */
export function adaptiveIntegral(f: (x: number) => number, a: number, b: number, tolerance: number): Bounded {
  let value = 0;
  let error = 0;
  const refine = (from: number, to: number, depth: number): void => {
    const fine = gauss(f, from, to, EIGHT);
    const apart = Math.abs(fine - gauss(f, from, to, FOUR));
    const allowed = Math.max((tolerance * (to - from)) / (b - a), 4 * Number.EPSILON * Math.abs(fine));
    // not a number must end here too
    if (!(apart > allowed) || depth === MAX_HALVINGS) {
      value += fine;
      error += apart;
      return;
    }
    const middle = (from + to) / 2;
    refine(from, middle, depth + 1);
    refine(middle, to, depth + 1);
  };
  if (b > a) {
    refine(a, b, 0);
  }
  return { value, error };
}

function gauss(f: (x: number) => number, a: number, b: number, rule: readonly number[]): number {
  const half = (b - a) / 2;
  const middle = (a + b) / 2;
  let sum = 0;
  for (let k = 0; k < rule.length; k += 2) {
    sum += rule[k + 1] * (f(middle - half * rule[k]) + f(middle + half * rule[k]));
  }
  return sum * half;
}
