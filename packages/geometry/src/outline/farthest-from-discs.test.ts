import { type Point, packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { farthestFromDiscs } from './farthest-from-discs.ts';

const place = fc.double({ min: -9, max: 9, noNaN: true });
const points = (least: number, most: number): fc.Arbitrary<[number, number][]> =>
  fc.array(fc.tuple(place, place), { minLength: least, maxLength: most });

test('no place of an outline is farther from all centres, and one is as far', () => {
  fc.assert(
    fc.property(points(3, 6), points(1, 40), (outline, centres) => {
      const found = farthestFromDiscs(packRings([outline.flat()]), centres, 0);
      const nearest = (x: number, y: number): number =>
        Math.min(...centres.map(([cx, cy]: Point) => Math.hypot(x - cx, y - cy)));
      // distances change by no more than the way along a side
      const step = 1 / 400;
      let most = 0;
      let longest = 0;
      outline.forEach(([ax, ay], i) => {
        const [bx, by] = outline[(i + 1) % outline.length];
        longest = Math.max(longest, Math.hypot(bx - ax, by - ay));
        for (let t = 0; t <= 1; t += step) {
          most = Math.max(most, nearest(ax + t * (bx - ax), ay + t * (by - ay)));
        }
      });
      expect(found).toBeGreaterThanOrEqual(most - 1e-9);
      expect(found).toBeLessThanOrEqual(most + (step / 2) * longest + 1e-9);
    }),
    cases(60),
  );
});

test('what is given as least stands where nothing is farther', () => {
  expect(farthestFromDiscs(packRings([[0, 0, 1, 0, 0, 1]]), [[0, 0]], 2)).toBe(2);
});

test('between centres at the corners the middle of a side is farthest', () => {
  const corners: Point[] = [
    [0, 0],
    [4, 0],
    [4, 2],
    [0, 2],
  ];
  expect(farthestFromDiscs(packRings([corners.flat()]), corners, 0)).toBe(2);
});

test('centres that only rounding tells apart are no more work than one', () => {
  // a search that halves to the last nanometre would not end
  const beside = Array.from({ length: 12 }, (_, k): Point => [k * 1e-16, 1 + k * 2e-16]);
  const outline = packRings([[0, 0, 30, -7, 31, 4]]);
  const found = farthestFromDiscs(outline, [...beside, [40, 1]], 0.1);
  // of the points as near to both places, x = 20, the one on the lower side
  expect(found).toBeCloseTo(Math.hypot(20, 1 + 140 / 30), 8);
});
