import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SweepStatus } from './sweep-status.ts';

/** Checks a status against the list of what it should hold, by rising y. */
function expectOrder(status: SweepStatus, order: readonly number[], size: number): void {
  expect(status.lowest()).toBe(order[0] ?? -1);
  order.forEach((s, k) => {
    expect(status.below[s]).toBe(order[k - 1] ?? -1);
    expect(status.above[s]).toBe(order[k + 1] ?? -1);
  });
  const inside = new Set(order);
  expect(Array.from({ length: size }, (_, s) => status.has(s))).toEqual(
    Array.from({ length: size }, (_, s) => inside.has(s)),
  );
  // the search finds every place there is, from below all to above all
  const rank = new Map(order.map((s, k) => [s, k]));
  for (let k = -1; k < order.length; k++) {
    expect(status.lastUnder((s) => (rank.get(s) as number) <= k)).toBe(order[k] ?? -1);
  }
}

const step = fc.record({ isIn: fc.boolean(), at: fc.nat() });

test('segments stay in the order in which they were put in, whichever come and go', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
      const status = new SweepStatus();
      const order: number[] = [];
      let size = 0;
      for (const { isIn, at } of steps) {
        if (isIn || order.length === 0) {
          const k = at % (order.length + 1);
          status.addSlot();
          status.insertAbove(order[k - 1] ?? -1, size);
          order.splice(k, 0, size++);
        } else {
          const [gone] = order.splice(at % order.length, 1);
          status.remove(gone as number);
        }
        expectOrder(status, order, size);
      }
    }),
  );
});

test('hundreds of segments are found in some tens of steps, wherever they were put in', () => {
  for (const where of ['below all', 'above all', 'in the middle']) {
    const status = new SweepStatus();
    const order: number[] = [];
    for (let s = 0; s < 500; s++) {
      const k = where === 'below all' ? 0 : where === 'above all' ? s : s >> 1;
      status.addSlot();
      status.insertAbove(order[k - 1] ?? -1, s);
      order.splice(k, 0, s);
    }
    const rank = new Map(order.map((s, k) => [s, k]));
    for (let k = -1; k < 500; k += 7) {
      let asked = 0;
      const found = status.lastUnder((s) => {
        asked++;
        return (rank.get(s) as number) <= k;
      });
      expect(found).toBe(order[k] ?? -1);
      // a random search tree of 500 is some twenty deep; a list would be 500
      expect(asked).toBeLessThan(60);
    }
  }
});

test('a segment taken out can be put in elsewhere', () => {
  const status = new SweepStatus();
  for (let s = 0; s < 3; s++) {
    status.addSlot();
    status.insertAbove(s - 1, s);
  }
  status.remove(0);
  status.insertAbove(2, 0);
  expectOrder(status, [1, 2, 0], 3);
});
