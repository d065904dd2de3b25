import { medialAxis } from '@pourproof/geometry';
import { expect, test } from 'vitest';
import { pathLength } from '../../../../../tests/support/oracles/path-length.ts';
import { cleanFrom, rectangle } from '../../../../../tests/support/shapes/clean-from.ts';
import { clearingPath } from './clearing-path.ts';

const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));

test('loops farther apart than the radius get a tail into each corner, there and back, without a point on the way', () => {
  const path = clearingPath(axis, { diameterMm: 3, stepoverMm: 3, depthMm: 2 });
  // rings 17 × 7 and 11 × 1, a link of 3 mm, and tails from 4.5 to 3 mm off both walls
  const tail = 1.5 * Math.SQRT2;
  expect(pathLength(path)).toBeCloseTo(48 + 24 + 2 * 3 + 4 * 2 * tail, 9);
  // one run of moves: 4 sides a ring, a side parted at each end of the link, tails at corners
  expect([...path.runEnds]).toEqual([1 + 2 * 4 + 2 + 2 + 4 * 2]);
});

test('where the innermost loop is the ridge itself its ends get one tail a corner, as anywhere', () => {
  const path = clearingPath(axis, { diameterMm: 3.5, stepoverMm: 3.25, depthMm: 2 });
  // ring 16.5 × 6.5, the ridge there and back, a link of 3.25 mm, and tails from 5 to 3.5 mm off both walls
  expect(pathLength(path)).toBeCloseTo(46 + 20 + 2 * 3.25 + 4 * 2 * 1.5 * Math.SQRT2, 6);
});
