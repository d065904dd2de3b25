import { expect, test } from 'vitest';
import type { Segment } from './path.ts';
import { directionAt, isPointSegment } from './segment-at.ts';

const line = (x0: number, y0: number, x: number, y: number): Segment => ({ kind: 'line', x0, y0, x, y });
const cubic = (...[x0, y0, x1, y1, x2, y2, x, y]: number[]): Segment =>
  ({ kind: 'cubic', x0, y0, x1, y1, x2, y2, x, y }) as Segment;

test('a segment is a single point where all that draws it falls together', () => {
  expect(isPointSegment(line(3, 4, 3, 4))).toBe(true);
  expect(isPointSegment(line(3, 4, 3, 4.001))).toBe(false);
  expect(isPointSegment(line(3, 4, 3.001, 4))).toBe(false);
  expect(isPointSegment(cubic(3, 4, 3, 4, 3, 4, 3, 4))).toBe(true);
  // a loop that ends where it starts
  expect(isPointSegment(cubic(3, 4, 9, 4, 3, 9, 3, 4))).toBe(false);
});

test('a point has no direction; a line has its own, however short it is', () => {
  expect(directionAt(line(3, 4, 3, 4), 0)).toBeUndefined();
  expect(directionAt(line(0, 0, 3e-12, 4e-12), 0.5)).toEqual([
    expect.closeTo(0.6, 9),
    expect.closeTo(0.8, 9),
  ]);
});
