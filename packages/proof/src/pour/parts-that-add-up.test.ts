import fc from 'fast-check';
import { expect, test } from 'vitest';
import { partsThatAddUp, scaleDigits } from './parts-that-add-up.ts';

/** A printed decimal as a whole number of its last digit: sums of these are exact. */
const units = (grams: number, digits: number): number => Number(grams.toFixed(digits).replace('.', ''));

test('printed parts add up to the printed total exactly, on any scale', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 5000, noNaN: true }), { minLength: 1, maxLength: 6 }),
      fc.constantFrom(0.01, 0.1, 0.5, 1, 2, 5),
      (amounts, step) => {
        const digits = scaleDigits(step);
        const { partsG, totalG, runningG } = partsThatAddUp(amounts, step);
        expect(partsG.reduce((sum, part) => sum + units(part, digits), 0)).toBe(units(totalG, digits));
        expect(runningG.at(-1)).toBe(totalG);
        partsG.forEach((part, k) => {
          expect(Math.abs(part - (amounts[k] as number))).toBeLessThan(step * (1 + 1e-9));
        });
        // the total itself is the exact sum rounded to half a step
        const sum = amounts.reduce((total, amount) => total + amount, 0);
        expect(Math.abs(totalG - sum)).toBeLessThanOrEqual(step / 2 + 1e-9);
      },
    ),
  );
});

test('6.524 g of A and 2.723 g of B read 6.5 and 2.7 on a 0.1 g scale, running 6.5 then 9.2', () => {
  expect(partsThatAddUp([6.524, 2.723], 0.1)).toEqual({
    partsG: [6.5, 2.7],
    totalG: 9.2,
    runningG: [6.5, 9.2],
  });
});

test('three thirds of a gram do not lose a step', () => {
  expect(partsThatAddUp([1 / 3, 1 / 3, 1 / 3], 0.1).partsG).toEqual([0.4, 0.3, 0.3]);
});

test('amounts below 0 and steps of 0 are refused', () => {
  expect(() => partsThatAddUp([-1], 0.1)).toThrow(RangeError);
  expect(() => partsThatAddUp([1], 0)).toThrow(RangeError);
  expect(() => partsThatAddUp([Number.NaN], 0.1)).toThrow(RangeError);
});
