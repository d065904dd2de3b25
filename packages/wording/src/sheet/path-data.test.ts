import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { digits, linePath, ringsPath } from './path-data.ts';

test('rings are closed and lines are open', () => {
  expect(
    ringsPath(
      packRings([
        [0, 0, 10, 0, 10, 5],
        [1, 1, 2, 1, 2, 2],
      ]),
    ),
  ).toBe('M0 0L10 0L10 5ZM1 1L2 1L2 2Z');
  expect(linePath([0, 0, Math.PI, -0.0001])).toBe('M0 0L3.142 0');
  expect(linePath([])).toBe('');
});

test('numbers are short, and zero has no sign', () => {
  expect([digits(-0.0004), digits(12), digits(0.1 + 0.2)]).toEqual(['0', '12', '0.3']);
});
