import type { Transform } from '@pourproof/plane';

/** The largest factor by which a map stretches a length. */
export function largestScale([a, b, c, d]: Transform): number {
  const sum = a * a + b * b + c * c + d * d;
  const det = a * d - b * c;
  return Math.sqrt((sum + Math.sqrt(Math.max(0, sum * sum - 4 * det * det))) / 2);
}
