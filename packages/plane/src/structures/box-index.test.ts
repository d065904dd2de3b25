import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { BoxIndex } from './box-index.ts';

type Box = readonly [number, number, number, number];

const at = fc.integer({ min: -40, max: 40 });
const size = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 0, max: 6 }) },
  fc.integer({ min: 0, max: 80 }),
);
const box = fc.tuple(at, at, size, size).map(([x, y, w, h]): Box => [x, y, x + w, y + h]);
const boxes = fc.array(box, { maxLength: 200 });

test('a box is told of exactly the boxes that it meets, each once, as comparing all of them does', () => {
  fc.assert(
    fc.property(boxes, box, (list, [minX, minY, maxX, maxY]) => {
      const index = new BoxIndex(Float64Array.from(list.flat()));
      const found: number[] = [];
      expect(index.someIn(minX, minY, maxX, maxY, (item) => found.push(item) < 0)).toBe(false);
      const all = list.flatMap((b, k) =>
        b[0] <= maxX && b[2] >= minX && b[1] <= maxY && b[3] >= minY ? [k] : [],
      );
      expect(found.sort((a, b) => a - b)).toEqual(all);
      for (const wanted of all.slice(0, 3)) {
        expect(index.someIn(minX, minY, maxX, maxY, (item) => item === wanted)).toBe(true);
      }
    }),
  );
});

test('boxes inside out, as around nothing, are never met', () => {
  const nothing = [Infinity, Infinity, -Infinity, -Infinity];
  const index = new BoxIndex(Float64Array.from([...nothing, 0, 0, 1, 1, ...nothing]));
  const found: number[] = [];
  index.someIn(-9, -9, 9, 9, (item) => found.push(item) < 0);
  expect(found).toEqual([1]);
  expect(new BoxIndex(new Float64Array(0)).someIn(-9, -9, 9, 9, () => true)).toBe(false);
});

test('a search that shrinks as it goes finds the nearest box, and the best by distance and value', () => {
  const valued = fc.array(fc.tuple(box, fc.integer({ min: 0, max: 50 })), { minLength: 1, maxLength: 200 });
  fc.assert(
    fc.property(valued, at, at, (list, x, y) => {
      const index = new BoxIndex(
        Float64Array.from(list.flatMap(([b]) => b)),
        Float64Array.from(list, ([, value]) => value),
      );
      const distances = list.map(([[x0, y0, x1, y1]]) =>
        Math.hypot(Math.max(0, x0 - x, x - x1), Math.max(0, y0 - y, y - y1)),
      );
      let nearest = Infinity;
      let visits = 0;
      index.visitNear(
        x,
        y,
        (distance) => distance < nearest,
        (item) => {
          visits++;
          nearest = Math.min(nearest, distances[item]!);
        },
      );
      expect(nearest).toBe(Math.min(...distances));
      expect(visits).toBeLessThanOrEqual(list.length);
      let best = -Infinity;
      index.visitNear(
        x,
        y,
        (distance, value) => value - distance > best,
        (item) => {
          best = Math.max(best, list[item]![1] - distances[item]!);
        },
      );
      expect(best).toBe(Math.max(...list.map(([, value], k) => value - distances[k]!)));
    }),
  );
});
