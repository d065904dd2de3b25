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

test('keys in order but for a few at an end are told apart in time that grows with their number', () => {
  const looks = (count: number): number => {
    const list = Float64Array.from({ length: count }, (_, i) => (i < 3 ? count + i : i));
    let seen = 0;
    const keys = new Proxy(list, {
      get: (target, name) => {
        seen++;
        return Reflect.get(target, name);
      },
    });
    const items = Int32Array.from({ length: count }, (_, i) => i);
    selectByKey(keys, items, 0, count / 2, count);
    expect([...items.subarray(count / 2)].sort((a, b) => a - b)[0]).toBe(0);
    expect(Math.min(...list.subarray(count / 2))).toBe(count / 2 + 3);
    return seen;
  };
  expect(looks(8000)).toBeLessThan(6 * looks(2000));
});
