import { expect, test } from 'vitest';
import { smallestTrueMixG } from './smallest-true-mix.ts';

test('the film on wall and floor of the smallest true mix is the share that the ratio may be off by', () => {
  for (const tolerancePct of [2, 5, 10]) {
    const volumeMm3 = 1000 * (smallestTrueMixG(tolerancePct, 1.1) / 1.1);
    const floorMm2 = (Math.PI / 4) * 35 ** 2;
    const wettedMm2 = floorMm2 + (Math.PI * 35 * volumeMm3) / floorMm2;
    expect((100 * 0.05 * wettedMm2) / volumeMm3).toBeCloseTo(tolerancePct, 9);
  }
  // by hand: 1/(1 − 4/35) mm high, 962 mm²
  expect(smallestTrueMixG(5, 1.087)).toBeCloseTo(1.181, 3);
});

test('a tolerance below the film of a tall cup is refused', () => {
  expect(() => smallestTrueMixG(0.5, 1.1)).toThrow(RangeError);
});
