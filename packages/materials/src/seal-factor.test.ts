import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sealFactor } from './seal-factor.ts';
import { sealers } from './sealer.ts';

test('the factor of epoxy passes through its points and is straight in log-log between them', () => {
  expect(sealFactor(sealers.epoxy, 1, 1, 25)).toBe(0.18);
  expect(sealFactor(sealers.epoxy, 1, 2, 25)).toBe(0.18);
  expect(sealFactor(sealers.epoxy, 1, 24, 25)).toBe(0.02);
  // middle of 2 and 24 h in log is √48 h, middle of the factors √(0.18 × 0.02)
  expect(sealFactor(sealers.epoxy, 1, Math.sqrt(48), 25)).toBeCloseTo(Math.sqrt(0.18 * 0.02), 12);
  expect(sealFactor(sealers.epoxy, 1, 200, 25)).toBe(0.02);
});

test('longer cure and more coats never let more through', () => {
  const sealer = fc.constantFrom(...Object.values(sealers));
  fc.assert(
    fc.property(
      sealer,
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.integer({ min: 0, max: 4 }),
      fc.double({ min: 5, max: 35, noNaN: true }),
      (seal, one, two, coats, temperatureC) => {
        const [early, late] = [Math.min(one, two), Math.max(one, two)];
        const factor = (hours: number, n: number) => sealFactor(seal, n, hours, temperatureC);
        expect(factor(late, coats)).toBeLessThanOrEqual(factor(early, coats) * (1 + 1e-12));
        expect(factor(late, coats + 1)).toBeLessThanOrEqual(factor(late, coats) * (1 + 1e-12));
        expect(factor(late, coats)).toBeGreaterThan(0);
        expect(factor(early, coats)).toBeLessThanOrEqual(1);
      },
    ),
  );
});

test('a fresh coat seals nothing yet', () => {
  expect(sealFactor(sealers.epoxy, 1, 0, 25)).toBe(1);
});

test('a cold shop holds an epoxy seal back, and leaves a drying one as it is', () => {
  expect(sealFactor(sealers.epoxy, 1, 24, 15)).toBe(sealFactor(sealers.epoxy, 1, 12, 25));
  expect(sealFactor(sealers.shellac, 1, 1, 15)).toBe(0.35);
});

test('each further coat counts half in the logarithm', () => {
  expect(sealFactor(sealers.shellac, 3, 1, 25)).toBeCloseTo(0.35 ** 2, 12);
});
