import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { selectByKey } from './select-by-key.ts';

test('the smaller keys come in front of the middle, each with its item, and nothing else moves', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 2, maxLength: 40 }),
      fc.nat(),
      fc.nat(),
      (list, a, b) => {
        const low = a % list.length;
        const high = low + 1 + (b % (list.length - low));
        const middle = (low + high + 1) >> 1;
        const keys = Float64Array.from(list);
        const items = Int32Array.from(list, (_, i) => i);
        selectByKey(keys, items, low, middle, high);
        expect(Array.from(items, (i) => list[i])).toEqual([...keys]);
        expect([...items].sort((p, q) => p - q)).toEqual(list.map((_, i) => i));
        expect([...items.subarray(0, low), ...items.subarray(high)]).toEqual(
          list.map((_, i) => i).filter((i) => i < low || i >= high),
        );
        const front = Math.max(...keys.subarray(low, middle));
        expect(front).toBeLessThanOrEqual(Math.min(Infinity, ...keys.subarray(middle, high)));
      },
    ),
    cases(200),
  );
});
