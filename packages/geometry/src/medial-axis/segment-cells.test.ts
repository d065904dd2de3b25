import { expect, test } from 'vitest';
import { cleanFrom } from '../../../../tests/support/shapes/clean-from.ts';
import { medialAxis } from './medial-axis.ts';

test('a corner cut off by a billionth of the size has its disc to nine digits of that', () => {
  const c = 2 ** -30;
  // all points are exact: walls along (3, 4) and (5, −12) from a corner that a chord cuts off
  const ring = [5 * c, -12 * c, 320, -768, 1500, 0, 768, 1024, 3 * c, 4 * c];
  const { nodeR } = medialAxis(cleanFrom([ring]));
  // the circle that touches the chord and both walls beyond it: area over half the perimeter less the chord
  const chord = Math.hypot(2 * c, 16 * c);
  const touching = (28 * c * c) / ((5 * c + 13 * c + chord) / 2 - chord);
  const least = Math.min(...nodeR.filter((r) => r > 0));
  expect(least / touching).toBeCloseTo(1, 9);
});
