import { expect, test } from 'vitest';
import { leftStandingArea } from './cut-part.ts';

test('what the cut leaves of the artwork is their difference, and rounding is nothing', () => {
  expect(leftStandingArea(100, 90)).toBe(10);
  expect(leftStandingArea(100, 100 - 1e-13)).toBe(0);
  expect(leftStandingArea(100, 100.5)).toBe(0);
});
