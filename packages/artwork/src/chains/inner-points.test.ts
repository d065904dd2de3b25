import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { innerPoints, isInside } from './inner-points.ts';

const SQUARE = [0, 0, 10, 0, 10, 10, 0, 10];
/** A U of two arms, 2 and 4 mm wide, on a foot that is 2 mm high. */
const U_SHAPE = [0, 0, 2, 0, 2, 8, 6, 8, 6, 0, 10, 0, 10, 10, 0, 10];

describe('points within a ring', () => {
  test('stand in the middle of its widest stretch at five heights, whichever way the ring runs', () => {
    for (const ring of [SQUARE, SQUARE.toReversed()]) {
      const points = innerPoints(ring);
      expect(points).toHaveLength(5);
      expect(points.map(([x]) => x)).toEqual([5, 5, 5, 5, 5].map((x) => expect.closeTo(x, 12)));
      expect(points.every(([, y]) => y > 1 && y < 9)).toBe(true);
    }
    // the wider arm, and at 8.59 mm the foot
    expect(innerPoints(U_SHAPE).map(([x]) => x)).toEqual([8, 8, 8, 8, 5].map((x) => expect.closeTo(x, 12)));
    expect(innerPoints([0, 0, 10, 0, 0, 10]).map(([x, y]) => 2 * x + y)).toEqual(
      [10, 10, 10, 10, 10].map((sum) => expect.closeTo(sum, 12)),
    );
  });

  test('are none where it encloses nothing', () => {
    expect(innerPoints([0, 0, 10, 0])).toEqual([]);
    expect(innerPoints([0, 0, 0, 10])).toEqual([]);
    expect(innerPoints([3, 3])).toEqual([]);
  });

  test('lie within it', () => {
    const angle = fc.double({ min: 0, max: 6, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(angle, fc.double({ min: 1, max: 9, noNaN: true })), { minLength: 3 }),
        (star) => {
          const ring = star
            .toSorted(([a], [b]) => a - b)
            .flatMap(([a, r]) => [r * Math.cos(a), r * Math.sin(a)]);
          expect(innerPoints(ring).every(([x, y]) => isInside(ring, x, y))).toBe(true);
        },
      ),
    );
  });
});

test.each([
  [1, 5, true],
  [4, 5, false],
  [8, 5, true],
  [5, 9, true],
  [-1, 5, false],
  [11, 5, false],
  [5, -1, false],
  [5, 11, false],
])('(%d, %d) lies in the U: %s', (x, y, isIn) => {
  expect(isInside(U_SHAPE, x, y)).toBe(isIn);
  expect(isInside(U_SHAPE.toReversed(), y, x)).toBe(isIn);
});
