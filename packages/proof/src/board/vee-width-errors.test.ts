import { resolveRegions } from '@pourproof/arrangement';
import { settleJob } from '@pourproof/job';
import { type Point, packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { faceHeights } from './face-heights.ts';
import { placeBoard } from './place-board.ts';
import { veeWidthErrors } from './vee-width-errors.ts';

/**
 * A board of 300 × 180 mm that rises evenly by 2 mm from left to right, and a cut of 200 × 40 mm in its
 * middle.
 */
const READINGS = (
  [
    [0, 0],
    [300, 0],
    [300, 180],
    [0, 180],
    [150, 90],
  ] as const
).map((atMm): { atMm: Point; heightMm: number } => ({ atMm, heightMm: atMm[0] / 150 }));
const { region: CUT } = resolveRegions([
  { ...packRings([[0, 0, 200, 0, 200, 40, 0, 40]]), fillRule: 'nonzero' },
]);
const job = settleJob({ board: 'plain 300x180x20mm maple' });
const levelledBy = (byMm: number) =>
  faceHeights(CUT, [100, 20], placeBoard(job, [0, 0, 200, 40]), READINGS, { region: CUT, byMm });
const heights = levelledBy(0);

test('the face under the cut is 100/150 mm lower at its left end and as much higher at its right end', () => {
  expect(heights?.lowestMm).toBeCloseTo(-2 / 3, 9);
  expect(heights?.heightAt([100, 20])).toBeCloseTo(0, 12);
  expect(heights?.heightAt([175, 0])).toBeCloseTo(0.5, 9);
});

test('a levelling takes down what is higher than its plane, and the bit is set on what is left', () => {
  // the plane is 2/3 − 0.5 = 1/6 mm above the middle, then 1/3 mm below it
  const [little, more, all] = [0.5, 1, 4 / 3].map(levelledBy);
  expect([little?.highestMm, little?.lowestMm]).toEqual([
    expect.closeTo(1 / 6, 9),
    expect.closeTo(-2 / 3, 9),
  ]);
  expect([100, 175].map((x) => little?.heightAt([x, 0]))).toEqual([
    expect.closeTo(0, 9),
    expect.closeTo(1 / 6, 9),
  ]);
  expect([more?.highestMm, more?.lowestMm]).toEqual([expect.closeTo(0, 9), expect.closeTo(-1 / 3, 9)]);
  expect([all?.highestMm, all?.lowestMm]).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
});

// 2 Δz tan(A/2) with Δz = 2/3 mm
test.each([
  [30, 0.357266],
  [60, 0.7698],
  [90, 1.333333],
])('a %d° V comes out %d mm narrower at the low end and as much wider at the high end', (deg, errorMm) => {
  if (heights === null) {
    throw new Error('the board was measured');
  }
  const errors = veeWidthErrors(heights, (deg * Math.PI) / 180);
  expect(errors.narrowerByMm).toBeCloseTo(errorMm, 5);
  expect(errors.widerByMm).toBeCloseTo(errorMm, 5);
  expect(errors.narrowerAt[0]).toBeCloseTo(0, 9);
  expect(errors.widerAt[0]).toBeCloseTo(200, 9);
  expect(() => veeWidthErrors(heights, Math.PI)).toThrow(RangeError);
});
