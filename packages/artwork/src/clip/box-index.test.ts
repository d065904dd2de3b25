import type { Bounds } from '@pourproof/plane';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { indexBoxes } from './box-index.ts';

const side = fc.integer({ min: 0, max: 60 });
const box = fc
  .tuple(side, side, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }))
  .map(([x, y, w, h]): Bounds => [x, y, x + w, y + h]);

test('finds exactly the boxes that comparing all of them finds, in rising order', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 60 }), box, (boxes, asked) => {
      const all = boxes.flatMap((b, i) =>
        b[0] < asked[2] && asked[0] < b[2] && b[1] < asked[3] && asked[1] < b[3] ? [i] : [],
      );
      const index = indexBoxes(boxes);
      expect(index.overlapping(asked)).toEqual(all);
      for (const wanted of [0, 3, 7]) {
        const end = boxes.length - 2;
        expect(index.someBefore(end, asked, (i) => i % 8 === wanted)).toBe(
          all.some((i) => i < end && i % 8 === wanted),
        );
      }
    }),
  );
});
