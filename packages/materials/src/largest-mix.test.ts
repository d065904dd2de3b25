import { expect, test } from 'vitest';
import { largestMixG } from './largest-mix.ts';
import { resins } from './resin.ts';

test('ten degrees more leave 1/√8 of the largest cup, a colder shop allows no more than the class', () => {
  expect(largestMixG(resins.coating, 25)).toBe(500);
  expect(largestMixG(resins.coating, 35)).toBeCloseTo(500 / Math.sqrt(8), 9);
  expect(largestMixG(resins.coating, 15)).toBe(500);
});

test('slower resins may be mixed in larger cups', () => {
  expect(largestMixG(resins['deep-pour'], 25)).toBeGreaterThan(largestMixG(resins.coating, 25));
});
