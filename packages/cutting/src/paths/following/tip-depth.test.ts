import { expect, test } from 'vitest';
import { radiusAtDepth, tipDepth, tipSlope } from './tip-depth.ts';

test('depth and radius are inverse to each other on the tip and on the flanks, and the slope is the quotient of both', () => {
  for (const tip of [
    { includedRad: 1, tipRadiusMm: 0, tipFlatMm: 0 },
    { includedRad: 0.6, tipRadiusMm: 0, tipFlatMm: 0.4 },
    { includedRad: 1.2, tipRadiusMm: 1.5, tipFlatMm: 0 },
  ]) {
    for (const clearance of [0.3, 0.8, 1.1, 1.4, 3]) {
      const depth = tipDepth(tip, clearance);
      expect(radiusAtDepth(tip, depth)).toBeCloseTo(clearance, 12);
      const step = 1e-6;
      const rise = (tipDepth(tip, clearance + step) - tipDepth(tip, clearance - step)) / (2 * step);
      expect(tipSlope(tip, clearance)).toBeCloseTo(rise, 8);
    }
  }
});

test('on a rounded tip the depth is the height of the cap of a sphere', () => {
  const tip = { includedRad: 1, tipRadiusMm: 2, tipFlatMm: 0 };
  expect(tipDepth(tip, 1.2)).toBeCloseTo(2 - 1.6, 12);
  expect(radiusAtDepth(tip, 0.4)).toBeCloseTo(1.2, 12);
});
