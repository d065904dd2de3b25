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
    fc.property(fc.array(box, { minLength: 1, maxLength: 60 }), fc.nat(), (boxes, pick) => {
      const asked = pick % boxes.length;
      const a = boxes[asked]!;
      const all = boxes.flatMap((b, i) =>
        i !== asked && b[0] < a[2] && a[0] < b[2] && b[1] < a[3] && a[1] < b[3] ? [i] : [],
      );
      const index = indexBoxes(Float64Array.from(boxes.flat()));
      expect(index.overlapping(asked)).toEqual(all);
      expect(index.overlapping(asked)).toEqual(all);
      for (const wanted of [0, 3, 7]) {
        expect(index.someBefore(asked, (i) => i % 8 === wanted)).toBe(
          all.some((i) => i < asked && i % 8 === wanted),
        );
        expect(index.someAfter(asked, (i) => i % 8 === wanted)).toBe(
          all.some((i) => i > asked && i % 8 === wanted),
        );
      }
    }),
  );
});
