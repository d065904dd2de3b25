import type { Bounds } from '@pourproof/plane';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { OverlapIndex } from './boxes.ts';

const side = fc.integer({ min: 0, max: 60 });
const box = fc
  .tuple(side, side, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }))
  .map(([x, y, w, h]): Bounds => [x, y, x + w, y + h]);

test('tests exactly the boxes that comparing all of them finds, each once', () => {
  fc.assert(
    fc.property(fc.array(box, { minLength: 1, maxLength: 60 }), fc.nat(), (boxes, pick) => {
      const asked = pick % boxes.length;
      const a = boxes[asked]!;
      const all = boxes.flatMap((b, i) =>
        i !== asked && b[0] < a[2] && a[0] < b[2] && b[1] < a[3] && a[1] < b[3] ? [i] : [],
      );
      const index = new OverlapIndex(Float64Array.from(boxes.flat()));
      const found: number[] = [];
      expect(index.some(asked, (i) => found.push(i) < 0)).toBe(false);
      expect(found.sort((i, k) => i - k)).toEqual(all);
      for (const wanted of [0, 3, 7]) {
        expect(index.some(asked, (i) => i % 8 === wanted)).toBe(all.some((i) => i % 8 === wanted));
      }
    }),
  );
});
