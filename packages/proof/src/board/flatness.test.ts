import type { Point } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitSurface } from './flatness.ts';

const NINE: readonly Point[] = [0, 150, 300].flatMap((x) => [0, 90, 180].map((y): Point => [x, y]));
const FIVE: readonly Point[] = [
  [0, 0],
  [300, 0],
  [300, 180],
  [0, 180],
  [150, 90],
];
const read = (places: readonly Point[], height: (x: number, y: number) => number) =>
  places.map((atMm) => ({ atMm, heightMm: height(...atMm) }));

describe('the fitted surface', () => {
  test('is the surface itself when the board is a plane with twist, cup and bow', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 }),
        (k) => {
          const height = (x: number, y: number): number => {
            const [u, v] = [x / 150 - 1, y / 90 - 1];
            const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = k;
            return a + b * u + c * v + d * u * v + e * u * u + f * v * v;
          };
          const surface = fitSurface(read(NINE, height));
          // rounding only: readings are of the order of 1 mm
          expect(surface.residualMm).toBeLessThan(1e-12);
          expect(surface.heightAt([40, 170])).toBeCloseTo(height(40, 170), 11);
        },
      ),
    );
  });

  test('of five readings passes through all of them: plane, twist and bowl', () => {
    const heights = [0.3, -0.1, 0.4, 0, 0.2];
    const surface = fitSurface(FIVE.map((atMm, i) => ({ atMm, heightMm: heights[i] ?? 0 })));
    expect(surface.terms).toBe(5);
    expect(surface.residualMm).toBeLessThan(1e-12);
  });

  test('has residuals that no shape of it can explain: they are orthogonal to all of them', () => {
    const readings = NINE.map((atMm, i) => ({ atMm, heightMm: Math.sin(7 * i) }));
    const surface = fitSurface(readings);
    const left = readings.map(({ atMm, heightMm }) => heightMm - surface.heightAt(atMm));
    for (const shape of [
      () => 1,
      (u: number) => u,
      (_: number, v: number) => v,
      (u: number, v: number) => u * v,
      (u: number) => u * u,
      (_: number, v: number) => v * v,
    ]) {
      const sum = NINE.reduce(
        (total, [x, y], i) => total + shape(x / 150 - 1, y / 90 - 1) * (left[i] ?? 0),
        0,
      );
      expect(Math.abs(sum)).toBeLessThan(1e-12);
    }
  });

  test('leaves flat what six readings on two lines cannot tell', () => {
    const surface = fitSurface(
      read(
        [
          [0, 0],
          [150, 0],
          [300, 0],
          [0, 180],
          [150, 180],
          [300, 180],
        ],
        (x) => ((x - 150) / 150) ** 2,
      ),
    );
    // bow along x is seen, and cup across cannot be told from height
    expect(surface.terms).toBe(5);
    expect(surface.heightAt([0, 0])).toBeCloseTo(1, 12);
    expect(surface.heightAt([150, 180])).toBeCloseTo(0, 12);
  });

  test('refuses fewer than 5, more than 9 and numbers that are none', () => {
    expect(() => fitSurface(read(FIVE.slice(1), () => 0))).toThrow(RangeError);
    expect(() => fitSurface(read([...NINE, [1, 1]], () => 0))).toThrow(RangeError);
    expect(() => fitSurface(read(FIVE, () => Number.NaN))).toThrow(RangeError);
  });
});
