import fc from 'fast-check';
import { expect, test } from 'vitest';
import { roundedNumber, roundedReport } from './rounded-report.ts';

const finite = fc.double({ noNaN: true, noDefaultInfinity: true });

test('a rounded number is within half of its tenth digit or of 10⁻⁹, and rounding again changes nothing', () => {
  fc.assert(
    fc.property(finite, (value) => {
      const once = roundedNumber(value);
      expect(Math.abs(once - value)).toBeLessThanOrEqual(Math.max(6e-10, 6e-10 * Math.abs(value)));
      expect(roundedNumber(once)).toBe(once);
    }),
  );
});

test('the last bits of a sine do not show, also where a 5 stands behind the last digit', () => {
  const halves = fc
    .tuple(fc.integer({ min: 1e9, max: 1e10 - 1 }), fc.integer({ min: -6, max: 6 }))
    .map(([digits, power]) => Number(`${digits}.5e${power - 9}`));
  const near = fc.integer({ min: -40, max: 40 }).map((steps) => 1 + steps * Number.EPSILON);
  fc.assert(
    fc.property(fc.oneof(halves, fc.double({ min: 1e-3, max: 1e6, noNaN: true })), near, (value, factor) => {
      fc.pre(isFarFromOffHalf(value));
      expect(roundedNumber(value * factor)).toBe(roundedNumber(value));
    }),
  );
});

test('numbers are rounded as their texts are', () => {
  const byText = (value: number): number => {
    const off = value * (1 + 2 ** -42);
    return Number(Number(off.toPrecision(10)).toFixed(9)) + 0;
  };
  const scales = fc
    .tuple(fc.double({ min: -10, max: 10, noNaN: true }), fc.integer({ min: -14, max: 14 }))
    .map(([value, power]) => value * 10 ** power);
  const roundOnes = fc
    .tuple(fc.integer({ min: -1e6, max: 1e6 }), fc.integer({ min: -12, max: 3 }))
    .map(([digits, power]) => Number(`${digits}e${power}`));
  fc.assert(
    fc.property(fc.oneof(scales, roundOnes), (value) => {
      expect(roundedNumber(value)).toBe(Number.isInteger(value) ? value + 0 : byText(value));
    }),
    { numRuns: 2000 },
  );
});

/** Random doubles, unlike round inputs, may lie where rounding turns over after all. */
function isFarFromOffHalf(value: number): boolean {
  return roundedNumber(value * (1 + 1e-13)) === roundedNumber(value * (1 - 1e-13));
}

test('what is left of a difference of equals is 0, and never −0', () => {
  expect([0.1 + 0.2 - 0.3, -1e-15, -0].map(roundedNumber)).toEqual([0, 0, 0]);
});

test('all numbers of data are rounded, and nothing else is touched', () => {
  expect(roundedReport({ a: [0.1 + 0.2, { b: null, c: 'x 0.30000000000000004' }], d: true })).toEqual({
    a: [0.3, { b: null, c: 'x 0.30000000000000004' }],
    d: true,
  });
});
