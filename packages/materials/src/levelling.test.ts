import { expect, test } from 'vitest';
import { veeWidthLossMm } from './levelling.ts';

test.each([
  [30, 1.73205],
  [60, 1.42265],
  [90, 1],
])('sanding 0.5 mm off a 2 mm stroke of a %d° V leaves %d mm', (angleDeg, leftMm) => {
  expect(2 - veeWidthLossMm(0.5, angleDeg)).toBeCloseTo(leftMm, 5);
});
