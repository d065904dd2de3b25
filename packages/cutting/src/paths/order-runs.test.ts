import { TIE_GRAIN_MM } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderRuns } from './order-runs.ts';

const places = fc.oneof(fc.integer({ min: -50, max: 50 }), fc.double({ min: -1000, max: 1000, noNaN: true }));

test('each run is taken once, and always the one whose start is nearest to where the last ended', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(places, places, places, places), { maxLength: 60 }), (runs) => {
      const starts = runs.flatMap((run) => run.slice(0, 2));
      const ends = runs.flatMap(([, , x, y]) => [x, y]);
      const order = orderRuns(starts, ends);
      expect([...order].sort((a, b) => a - b)).toEqual(runs.map((_, k) => k));
      const left = new Set(order);
      order.forEach((k, i) => {
        left.delete(k);
        const next = order[i + 1];
        if (next !== undefined) {
          const way = (j: number): number =>
            Math.hypot(
              (starts[2 * j] as number) - (ends[2 * k] as number),
              (starts[2 * j + 1] as number) - (ends[2 * k + 1] as number),
            );
          // ways that differ by rounding alone are equal
          expect(way(next) - Math.min(...[...left].map(way))).toBeLessThanOrEqual(TIE_GRAIN_MM);
        }
      });
    }),
  );
});

test('starts may lie on one line or in one point', () => {
  expect(orderRuns([0, 0, 5, 0, 1, 0], [0, 0, 5, 0, 1, 0])).toEqual([0, 2, 1]);
  expect(orderRuns([2, 2, 2, 2], [2, 2, 2, 2])).toEqual([0, 1]);
  expect(orderRuns([], [])).toEqual([]);
});
