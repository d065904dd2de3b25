import { type CleanRegion, perimeter, ringCoords } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnShapes, latticeNames, polygonFamilies } from '../arbitraries.ts';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';

const cornersOf = ({ coords }: { readonly coords: ArrayLike<number> }): number => coords.length / 2;

/** Perimeter with a planted fault: the last edge of each ring of more than three corners is forgotten when it is longer than 0.1 mm. */
function faultyPerimeter(region: CleanRegion): number {
  let sum = 0;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const c = ringCoords(region, k);
    for (let i = 0; i < c.length; i += 2) {
      const j = (i + 2) % c.length;
      const length = Math.hypot(c[j]! - c[i]!, c[j + 1]! - c[i + 1]!);
      sum += j === 0 && c.length > 6 && length > 0.1 ? 0 : length;
    }
  }
  return sum;
}

/** The fewest corners of a region of each family that has a ring of more than three. */
const SMALLEST: Readonly<Record<keyof typeof polygonFamilies, number>> = {
  spiky: 4,
  holed: 6 + 3,
  'near-touching': 4 * 4,
  'grid-aligned': 4,
  convex: 4,
  teeth: 6,
  curved: 12 + 12,
  hairlines: 4,
};

describe.each(Object.entries(polygonFamilies))('polygons, %s', (family, polygons) => {
  test('are clean', () => {
    fc.assert(
      fc.property(polygons, (region) => {
        expect(cleanRegionFaults(region)).toEqual([]);
      }),
    );
  });

  test('a planted fault shrinks to the smallest polygon that shows it', () => {
    const result = fc.check(
      fc.property(polygons, (region) => Math.abs(faultyPerimeter(region) / perimeter(region) - 1) < 1e-9),
    );
    expect(result.failed).toBe(true);
    expect(cornersOf(result.counterexample![0])).toBe(SMALLEST[family]);
  });
});

test.each(latticeNames)('a planted fault shrinks to a small drawing on %s', (lattice) => {
  const result = fc.check(
    fc.property(drawnShapes(lattice), (shapes) => shapes.every((shape) => cornersOf(shape) <= 4)),
  );
  expect(result.failed).toBe(true);
  const [shapes] = result.counterexample!;
  // five corners show it; fast-check tries no drawing without the last shape or ring alone
  expect(shapes.reduce((sum, shape) => sum + cornersOf(shape), 0)).toBeLessThanOrEqual(12);
});
