import fc from 'fast-check';
import { expect, test } from 'vitest';
import { byGrain, TIE_GRAIN_MM } from './tolerance.ts';

test('what rounding alone tells apart keeps its order, and what a nanometre tells apart is sorted', () => {
  const noise = fc.integer({ min: -3, max: 3 }).map((k) => 1 + k * Number.EPSILON);
  const sized = fc.tuple(fc.constantFrom(1.25, 7.5, 33), noise, fc.nat(99));
  fc.assert(
    fc.property(fc.array(sized), (items) => {
      const clean = items.toSorted(([a], [b]) => a - b);
      const noisy = items.toSorted(byGrain(([size, by]) => size * by));
      expect(noisy).toEqual(clean);
    }),
  );
  expect([1 + 3 * TIE_GRAIN_MM, 1].toSorted(byGrain((size) => size))).toEqual([1, 1 + 3 * TIE_GRAIN_MM]);
});
