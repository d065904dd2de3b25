import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { leastWhole } from './least-whole.ts';

test('finds the least that is enough, in as many looks as halving takes', () => {
  const whole = fc.integer({ min: -1000, max: 1000 });
  fc.assert(
    fc.property(whole, fc.integer({ min: 1, max: 5000 }), fc.nat(), (low, width, pick) => {
      const high = low + width;
      const least = low + 1 + (pick % width);
      let looks = 0;
      const found = leastWhole(low, high, (each) => {
        looks++;
        return each >= least;
      });
      expect(found).toBe(least);
      expect(looks).toBeLessThanOrEqual(Math.ceil(Math.log2(width)));
    }),
    cases(200),
  );
});
