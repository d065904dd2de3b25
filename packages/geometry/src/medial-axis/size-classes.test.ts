import { expect, test } from 'vitest';
import { sizeClasses } from './size-classes.ts';

function classesOf(sizes: number[]): number[][] {
  const order = new Int32Array(sizes.length);
  const ends = sizeClasses(Float64Array.from(sizes), order);
  return ends.map((end, c) => [...order.subarray(ends[c - 1] ?? 0, end)]);
}

test('sizes far apart are told apart, the most of them first; sizes that follow each other are not', () => {
  expect(classesOf([1e-3, 80, 90, 2e-3, 100, 60])).toEqual([
    [1, 2, 4, 5],
    [0, 3],
  ]);
  expect(classesOf([1, 2, 4, 8, 16, 32, 64, 128])).toEqual([[0, 1, 2, 3, 4, 5, 6, 7]]);
  expect(classesOf([5e3, 1, 1.5, 1.2, 1e-3])).toEqual([[1, 2, 3], [0], [4]]);
});

test('no more than four classes, the smallest sizes in one; none of nothing, and of 0 too', () => {
  expect(classesOf([1e8, 1e6, 1e4, 1e2, 1, 0])).toEqual([[3, 4, 5], [0], [1], [2]]);
  expect(classesOf([])).toEqual([[]]);
});
