import { describe, expect, test } from 'vitest';
import { absCosineIntegral } from './abs-cosine-integral.ts';
import { adaptiveIntegral } from './adaptive-integral.ts';

describe('adaptiveIntegral', () => {
  test('eight Gauss points integrate powers up to x¹⁵ exactly, and no more', () => {
    for (let power = 0; power <= 15; power++) {
      const { value } = adaptiveIntegral((x) => x ** power, 0, 1, Infinity);
      expect(value).toBeCloseTo(1 / (power + 1), 14);
    }
    const { value } = adaptiveIntegral((x) => x ** 16, -1, 1, Infinity);
    expect(Math.abs(value - 2 / 17)).toBeGreaterThan(1e-8);
  });

  test('four points agree on powers up to x⁷, so that nothing is halved', () => {
    for (let power = 0; power <= 8; power++) {
      let asked = 0;
      const f = (x: number): number => {
        asked++;
        return x ** power;
      };
      adaptiveIntegral(f, 0, 1, 1e-13);
      expect(asked > 12).toBe(power > 7);
    }
  });

  test('the stated error bounds the true one where the function has a kink or a vertical tangent', () => {
    for (const [f, want] of [
      [(x: number) => Math.abs(x - 1 / 3), 5 / 18],
      [Math.sqrt, 2 / 3],
    ] as const) {
      for (const tolerance of [1e-3, 1e-6, 1e-9]) {
        const { value, error } = adaptiveIntegral(f, 0, 1, tolerance);
        expect(Math.abs(value - want)).toBeLessThanOrEqual(error + 1e-15);
        expect(error).toBeLessThan(2 * tolerance);
      }
    }
  });

  test('a function that is all rounding ends after as many parts as any may have, and its error says so', () => {
    let asked = 0;
    // never the same for two numbers that differ in the last digit
    const noise = (x: number): number => {
      asked++;
      return Math.sin(1e16 * x) * 1e-12;
    };
    const { value, error } = adaptiveIntegral(noise, 0, 1, 1e-30);
    expect(Math.abs(value)).toBeLessThan(1e-12);
    expect(error).toBeGreaterThan(1e-15);
    // 512 parts, each asked at twelve places and halved once
    expect(asked).toBeLessThanOrEqual(12 * (2 * 512 - 1));
  });

  test('an empty interval gives 0, and NaN ends', () => {
    expect(adaptiveIntegral((x) => x, 1, 1, 1e-9)).toEqual({ value: 0, error: 0 });
    expect(adaptiveIntegral((x) => 1 / x, 0, 0, 1e-9)).toEqual({ value: 0, error: 0 });
    expect(adaptiveIntegral(() => Number.NaN, 0, 1, 1e-9).value).toBeNaN();
  });
});

test('absCosineIntegral is the integral of |a cos t + b| over any interval', () => {
  for (const [a, b] of [
    [1, 0],
    [2, 0.7],
    [-1.5, 1.4],
    [1, -2],
    [0, 0.3],
  ] as const) {
    for (const [from, to] of [
      [0, 1],
      [-2, 5],
      [1, 14],
      [-9, -8.5],
    ] as const) {
      const steps = 20000;
      const step = (to - from) / steps;
      let want = 0;
      for (let k = 0; k < steps; k++) {
        want += step * Math.abs(a * Math.cos(from + (k + 0.5) * step) + b);
      }
      // midpoints are off by the square of a step, kinks included
      expect(Math.abs(absCosineIntegral(a, b, from, to) - want)).toBeLessThan(10 * step * step);
    }
  }
});
