import { expect, test } from 'vitest';
import { normalCdf, normalDensity } from './normal.ts';

// 16-digit values of Φ as printed in the usual tables (Abramowitz & Stegun 26.2, table 26.1; from memory)
test.each([
  [0, 0.5],
  [1, 0.841344746068543],
  [1.959963984540054, 0.975],
  [2.575829303548901, 0.995],
  [3, 0.99865010196837],
  [-6, 9.86587645037698e-10],
])('Φ(%d) = %d', (z, probability) => {
  expect(Math.abs(normalCdf(z) / probability - 1)).toBeLessThan(1e-12);
});

test('differences of Φ are the integral of the density, across the change of method at 3 too', () => {
  for (const from of [-8, -4, -3.05, -1, 0, 1, 2.95, 4, 7]) {
    const steps = 200;
    let sum = 0;
    for (let step = 0; step <= steps; step++) {
      const weight = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
      sum += weight * normalDensity(from + (0.2 * step) / steps);
    }
    const simpson = (sum * 0.2) / steps / 3;
    expect(Math.abs(normalCdf(from + 0.2) - normalCdf(from) - simpson)).toBeLessThan(1e-13);
  }
});
