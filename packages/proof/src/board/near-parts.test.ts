import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type Bounds, type CleanRegion, packRings, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { blockAt } from './block-at.ts';
import { blockIndex } from './block-index.ts';
import { nearParts } from './near-parts.ts';
import type { PlacedBlock } from './place-board.ts';

const clean = (...rings: readonly (readonly number[])[]): CleanRegion =>
  resolveRegions([{ ...packRings(rings), fillRule: 'nonzero' }]).region;
const box = ([x0, y0, x1, y1]: Bounds): readonly number[] => [x0, y0, x1, y0, x1, y1, x0, y1];
/** A star of 6000 points with a hole, about 200 mm wide. */
const STAR = clean(
  Array.from({ length: 6000 }, (_, k) => {
    const angle = (2 * Math.PI * k) / 6000;
    const radius = 80 + 20 * Math.sin(12 * angle);
    return [100 + radius * Math.cos(angle), 100 + radius * Math.sin(angle)];
  }).flat(),
  box([90, 90, 110, 110])
    .toReversed()
    .flatMap((value, i, all) => (i % 2 === 0 ? [all[i + 1] as number, value] : [])),
);

test('in every square of a board the near part is the region itself', () => {
  const boxes = Array.from({ length: 16 }, (_, k): Bounds => {
    const [x, y] = [50 * (k % 4), 50 * Math.floor(k / 4)];
    return [x, y, x + 50, y + 50];
  });
  const parts = nearParts(STAR, boxes);
  let sum = 0;
  boxes.forEach((each, k) => {
    const square = clean(box(each));
    const whole = booleans(STAR, square, 'intersect');
    const near = booleans(parts[k] as CleanRegion, square, 'intersect');
    sum += signedArea(near);
    expect(signedArea(booleans(whole, near, 'xor'))).toBeLessThan(1e-9);
  });
  expect(sum).toBeCloseTo(signedArea(STAR), 8);
  // and it is far smaller: a point belongs to its own square, and near a joint to the next
  expect(parts.reduce((points, part) => points + part.coords.length / 2, 0)).toBeLessThan(1.2 * 6000);
});

const placed = (bounds: Bounds | null): PlacedBlock =>
  ({ region: bounds === null ? null : clean(box(bounds)) }) as PlacedBlock;

test('the index finds the blocks that a box meets, as asking all of them does', () => {
  const size = fc.double({ min: 0.5, max: 40, noNaN: true });
  const at = fc.double({ min: -100, max: 100, noNaN: true });
  const any = fc.tuple(at, at, size, size).map(([x, y, w, h]): Bounds => [x, y, x + w, y + h]);
  fc.assert(
    fc.property(fc.array(fc.option(any), { minLength: 1, maxLength: 30 }), any, (list, asked) => {
      const expected = list.flatMap((each, b) =>
        each === null ||
        (each[0] <= asked[2] && each[2] >= asked[0] && each[1] <= asked[3] && each[3] >= asked[1])
          ? [b]
          : [],
      );
      expect(blockIndex(list.map(placed)).near(asked)).toEqual(expected);
    }),
    cases(100),
  );
});

test('the block under a place is the first that holds it', () => {
  const under = blockAt([placed([0, 0, 10, 10]), placed([5, 0, 20, 10])]);
  expect([under(7, 5), under(12, 5), under(30, 5)]).toEqual([0, 1, -1]);
  expect(blockAt([placed([0, 0, 1, 1]), placed(null)])(50, 50)).toBe(1);
});
