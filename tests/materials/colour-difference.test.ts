import { ciede2000 } from '@pourproof/materials';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { publishedPairs } from '../support/oracles/published-colour-pairs.ts';

test('all 34 published pairs are there', () => {
  expect(publishedPairs.map((row) => row.pair)).toEqual(Array.from({ length: 34 }, (_, index) => index + 1));
});

// Sharma, Wu & Dalal 2005, table 1; printed to four decimals, so half a unit of the last
test.each(publishedPairs)('published pair $pair differs by $deltaE', ({ first, second, deltaE }) => {
  expect(Math.abs(ciede2000(first, second) - deltaE)).toBeLessThanOrEqual(5e-5);
  expect(Math.abs(ciede2000(second, first) - deltaE)).toBeLessThanOrEqual(5e-5);
});

const lab = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
);

test('a colour does not differ from itself, and the difference is never negative or undefined', () => {
  fc.assert(
    fc.property(lab, lab, (first, second) => {
      expect(ciede2000(first, first)).toBe(0);
      expect(ciede2000(first, second)).toBeGreaterThanOrEqual(0);
    }),
  );
});
