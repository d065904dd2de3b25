import { mmFromInches } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scaleBar } from './scale-bar.ts';

test.each([
  [120, 'mm', 20, '20 mm'],
  [150, 'mm', 50, '50 mm'],
  [2, 'mm', 1, '1 mm'],
  [120, 'in', mmFromInches(1), '1 in'],
  [20, 'in', mmFromInches(1 / 4), '1/4 in'],
  [8000, 'mm', 1000, '1000 mm'],
] as const)('a picture of %d mm width in %s gets a bar of %d mm', (width, unit, lengthMm, label) => {
  const bar = scaleBar(width, unit);
  expect(bar.label).toBe(label);
  expect(bar.lengthMm).toBeCloseTo(lengthMm, 9);
});

test('a bar is never longer than a third of the picture unless it is the shortest', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 5000, noNaN: true }),
      fc.constantFrom('mm', 'in'),
      (width, unit) => {
        const { lengthMm } = scaleBar(width, unit);
        expect(lengthMm <= width / 3 || lengthMm < 2).toBe(true);
      },
    ),
  );
});
