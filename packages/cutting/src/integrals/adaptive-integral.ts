/** A value with a bound on its error, in the same unit. */
export interface Bounded {
  readonly value: number;
  readonly error: number;
}

/**
 * Gauss–Legendre rules with four and eight points on −1 … 1, positive node and weight in turn (from memory; a
 * test integrates powers up to x¹⁵).
 */
const FOUR = [0.3399810435848563, 0.6521451548625461, 0.8611363115940526, 0.3478548451374538];
const EIGHT = [
  0.1834346424956498, 0.362683783378362, 0.525532409916329, 0.3137066458778873, 0.7966664774136267,
  0.2223810344533745, 0.9602898564975363, 0.1012285362903763,
];

/**
 * Greatest number of times that a part is halved, and greatest number of parts; what the rules then still differ by counts as error. A kink or
 * a steep end takes a few parts a halving. Where f is its own rounding (a cell a nanometre wide, where large moments cancel) the rules
 * never agree, and halving all of it to the end would take hours. Both numbers are our choice.
 */
const MAX_HALVINGS = 24;
const MAX_PARTS = 512;

/**
 * Integral of f over a … b by adaptive Gauss–Legendre quadrature: an interval is halved until the rules with
 * four and eight points differ by no more than its share of `tolerance`, or by rounding. The sum of the
 * differences is the error: far above the true one where f is smooth.
 */
export function adaptiveIntegral(f: (x: number) => number, a: number, b: number, tolerance: number): Bounded {
  let value = 0;
  let error = 0;
  let parts = 1;
  const refine = (from: number, to: number, depth: number): void => {
    const fine = gauss(f, from, to, EIGHT);
    const apart = Math.abs(fine - gauss(f, from, to, FOUR));
    const allowed = Math.max((tolerance * (to - from)) / (b - a), 4 * Number.EPSILON * Math.abs(fine));
    // negated, so that NaN ends here too
    if (!(apart > allowed) || depth === MAX_HALVINGS || parts === MAX_PARTS) {
      value += fine;
      error += apart;
      return;
    }
    parts++;
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
