import { resolveRegions } from '@pourproof/arrangement';
import { packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipSegment } from './clip-segment.ts';

const region = (...rings: number[][]) =>
  resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
const length = (parts: readonly (readonly [number, number])[]): number =>
  parts.reduce((sum, [from, to]) => sum + to - from, 0);

test('a segment through a square with a hole has two parts', () => {
  const ring = region([0, 0, 10, 0, 10, 10, 0, 10], [4, 4, 6, 4, 6, 6, 4, 6]);
  const parts = clipSegment(ring, [-10, 5, 20, 5], [0, 1]);
  expect(parts.flat()).toEqual(
    [10 / 30, 14 / 30, 16 / 30, 20 / 30].map((share) => expect.closeTo(share, 12)),
  );
});

test('a segment along a joint belongs to the side that is asked for, and to one side only', () => {
  const left = region([0, 0, 10, 0, 10, 10, 0, 10]);
  const right = region([10, 0, 20, 0, 20, 10, 10, 10]);
  for (const [side, other] of [
    [left, right],
    [right, left],
  ] as const) {
    const towards: [number, number] = side === left ? [-1, 0] : [1, 0];
    expect(clipSegment(side, [10, 2, 10, 7], towards)).toEqual([[0, 1]]);
    expect(clipSegment(other, [10, 2, 10, 7], towards)).toEqual([]);
  }
});

test('tiles share out any segment without rest', () => {
  const tiles = [0, 10, 20].flatMap((x) =>
    [0, 10, 20].map((y) => region([x, y, x + 10, y, x + 10, y + 10, x, y + 10])),
  );
  const inside = fc.double({ min: 0.5, max: 29.5, noNaN: true });
  fc.assert(
    fc.property(inside, inside, inside, inside, (ax, ay, bx, by) => {
      fc.pre(Math.hypot(bx - ax, by - ay) > 0.01);
      const normal: [number, number] = [by - ay, ax - bx];
      const sum = tiles.reduce(
        (total, tile) => total + length(clipSegment(tile, [ax, ay, bx, by], normal)),
        0,
      );
      expect(sum).toBeCloseTo(1, 9);
    }),
  );
});
