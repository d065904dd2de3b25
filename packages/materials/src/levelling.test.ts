import { expect, test } from 'vitest';
import {
  depthLeftMm,
  flatLevellingMarginMm,
  levelDropMm,
  veeLevellingMarginMm,
  veeWidthLossMm,
} from './levelling.ts';

test('2 % of 3.2 mm drop by 0.064 mm, and 0.5 mm of sanding leaves 2.636 mm', () => {
  expect(levelDropMm(3.2, 2)).toBeCloseTo(0.064, 12);
  expect(depthLeftMm(3.2, 0.5, 2)).toBeCloseTo(2.636, 12);
  expect(depthLeftMm(0.4, 0.5, 2)).toBe(0);
});

test.each([
  [30, 1.73205],
  [60, 1.42265],
  [90, 1],
])('sanding 0.5 mm off a 2 mm stroke of a %d° V leaves %d mm', (angleDeg, leftMm) => {
  expect(2 - veeWidthLossMm(0.5, angleDeg)).toBeCloseTo(leftMm, 5);
});

test.each([
  [30, 3.73205],
  [60, 1.73205],
  [90, 1],
])('a 2 mm stroke of a %d° V is gone after its depth of %d mm', (angleDeg, depthMm) => {
  expect(veeLevellingMarginMm(2, angleDeg, 0)).toBeCloseTo(depthMm, 5);
});

test('taking off the margin leaves exactly the limit', () => {
  const margin = veeLevellingMarginMm(2, 60, 0.5);
  expect(2 - veeWidthLossMm(margin, 60)).toBeCloseTo(0.5, 12);
  expect(depthLeftMm(3.2, flatLevellingMarginMm(3.2, 1.6, 2), 2)).toBeCloseTo(1.6, 12);
  expect(veeLevellingMarginMm(0.4, 60, 0.5)).toBe(0);
});
