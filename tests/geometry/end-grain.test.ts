import { endGrainLength } from '@pourproof/geometry';
import { compose, perimeter, radians, rotation, scaling, translation } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { box, moved, regionOf, regularPolygon, reordered } from '../support/shapes/known-shapes.ts';

const bar = regionOf(box(0, 0, 30, 4));
// 2·(extent across the fibre): 2·(30·|sin a| + 4·|cos a|)
const barValues: readonly (readonly [number, number])[] = [
  [0, 8],
  [90, 60],
  [30, 36.9282],
  [45, 48.08326],
];
const letter = regionOf(
  [0, 0, 12, 0, 12, 3, 4, 3, 4, 6, 10, 6, 10, 9, 4, 9, 4, 14, 0, 14],
  [1, 1, 3, 1, 3, 2, 1, 2],
);

describe('endGrainLength', () => {
  test.each(barValues)('of a bar of 30 × 4 mm with the fibre at %d°', (grainDeg, value) => {
    // the values are given to five digits behind the point
    expect(Math.abs(endGrainLength(bar, radians(grainDeg)) - value)).toBeLessThan(5.1e-6);
    expect(Math.abs(endGrainLength(reordered(bar), radians(grainDeg)) - value)).toBeLessThan(5.1e-6);
    expect(Math.abs(endGrainLength(bar, radians(grainDeg + 180)) - value)).toBeLessThan(5.1e-6);
    expect(Math.abs(endGrainLength(moved(bar, scaling(7)), radians(grainDeg)) / 7 - value)).toBeLessThan(
      5.1e-6,
    );
  });

  test.each([10, 77, 123, 211])('stays when bar and fibre are turned by %d°', (turnDeg) => {
    // y down: a turn by +angle of the drawing is clockwise as seen, the fibre's azimuth counts the other way
    const turned = moved(bar, compose(translation(50, -20), rotation(radians(turnDeg))));
    for (const [grainDeg, value] of barValues) {
      expect(Math.abs(endGrainLength(turned, radians(grainDeg - turnDeg)) - value)).toBeLessThan(5.1e-6);
    }
  });

  test('of a mirrored drawing is that of the mirrored fibre', () => {
    const mirrored = moved(letter, scaling(-1, 1));
    for (const grainDeg of [0, 17, 45, 90, 133]) {
      expect(endGrainLength(mirrored, radians(180 - grainDeg))).toBeCloseTo(
        endGrainLength(letter, radians(grainDeg)),
        10,
      );
    }
  });

  test('of a circle is four radii at every angle', () => {
    const sides = 720;
    const disc = regionOf(regularPolygon(5, sides));
    for (let grainDeg = 0; grainDeg < 360; grainDeg += 7.3) {
      // the polygon's width lies between those of its inner and outer circle
      const length = endGrainLength(disc, radians(grainDeg));
      expect(length).toBeLessThanOrEqual(20 + 1e-12);
      expect(length).toBeGreaterThanOrEqual(20 * Math.cos(Math.PI / sides) - 1e-12);
    }
  });

  test.each([
    ['bar', bar, 43.29014],
    ['letter with a hole', letter, undefined],
  ] as const)('has the mean 2/π of the perimeter over all angles (Cauchy): %s', (_, region, known) => {
    const steps = 20000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      sum += endGrainLength(region, (Math.PI * (i + 0.5)) / steps);
    }
    const mean = (2 * perimeter(region)) / Math.PI;
    // midpoint rule over kinks: error below perimeter · (π / steps)²
    expect(Math.abs(sum / steps - mean)).toBeLessThan(perimeter(region) * (Math.PI / steps) ** 2);
    if (known !== undefined) {
      expect(Math.abs(mean - known)).toBeLessThan(5.1e-6);
    }
  });

  test('is at least twice the width across the fibre and at most the perimeter', () => {
    for (let grainDeg = 0; grainDeg < 180; grainDeg += 5) {
      const length = endGrainLength(letter, radians(grainDeg));
      expect(length).toBeLessThanOrEqual(perimeter(letter));
      const across = Array.from(
        { length: letter.coords.length / 2 },
        (_, i) =>
          letter.coords[2 * i]! * -Math.sin(radians(grainDeg)) -
          letter.coords[2 * i + 1]! * Math.cos(radians(grainDeg)),
      );
      expect(length).toBeGreaterThanOrEqual(2 * (Math.max(...across) - Math.min(...across)) - 1e-9);
    }
  });

  test('of nothing is nothing', () => {
    expect(endGrainLength(regionOf(), 1)).toBe(0);
  });
});
