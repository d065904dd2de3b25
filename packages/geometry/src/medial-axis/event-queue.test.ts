import fc from 'fast-check';
import { expect, test } from 'vitest';
import { EventQueue } from './event-queue.ts';

test('items come out by rising key, however many went in', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ noNaN: true, min: 0 }), { maxLength: 300 }), (keys) => {
      const queue = new EventQueue();
      keys.forEach((key, item) => {
        queue.push(item, key);
      });
      const out: number[] = [];
      for (let item = queue.pop(); item >= 0; item = queue.pop()) {
        expect(queue.poppedKey).toBe(keys[item]);
        out.push(queue.poppedKey);
      }
      expect(out).toEqual([...keys].sort((a, b) => a - b));
    }),
  );
});
