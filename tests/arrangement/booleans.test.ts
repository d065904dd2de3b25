import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type CleanRegion, packRings, perimeter, ringCoords, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { drawnShapes, latticeNames } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';

function closed(ring: ArrayLike<number>): [number, number][] {
  const points: [number, number][] = [];
  for (let i = 0; i < ring.length; i += 2) {
    points.push([ring[i]!, ring[i + 1]!]);
  }
  return [...points, points[0]!];
}

/** Even-odd union of the rings by the other engine: rings of a clean region never overlap, so xor of all is their region. */
function asMultiPolygon(region: CleanRegion): MultiPolygon {
  const rings = Array.from(region.ringEnds, (_, k): Polygon => [closed(ringCoords(region, k))]);
  return rings.length === 0 ? [] : polygonClipping.xor(rings[0]!, ...rings.slice(1));
}

function areaOf(polygons: MultiPolygon): number {
  let sum = 0;
  for (const polygon of polygons) {
    polygon.forEach((ring, k) => {
      let twice = 0;
      for (let i = 0; i + 1 < ring.length; i++) {
        twice +=
          (ring[i]![0] - ring[0]![0]) * (ring[i + 1]![1] - ring[0]![1]) -
          (ring[i + 1]![0] - ring[0]![0]) * (ring[i]![1] - ring[0]![1]);
      }
      sum += (k === 0 ? 1 : -1) * Math.abs(twice / 2);
    });
  }
  return sum;
}

const engine = {
  union: (a: MultiPolygon, b: MultiPolygon) => polygonClipping.union(a, b),
  intersect: (a: MultiPolygon, b: MultiPolygon) => polygonClipping.intersection(a, b),
  subtract: (a: MultiPolygon, b: MultiPolygon) => polygonClipping.difference(a, b),
  xor: (a: MultiPolygon, b: MultiPolygon) => polygonClipping.xor(a, b),
} as const;
/** Area by the other engine; undefined where it stops with an error, as it does now and then where many edges meet. */
function areaByOther(operation: keyof typeof engine, a: MultiPolygon, b: MultiPolygon): number | undefined {
  let result: MultiPolygon;
  try {
    result = engine[operation](a, b);
  } catch {
    return;
  }
  return areaOf(result);
}

const operations = ['union', 'intersect', 'subtract', 'xor'] as const;

function square(x: number, y: number, side: number): CleanRegion {
  const ring = packRings([[x, y, x + side, y, x + side, y + side, x, y + side]]);
  return resolveRegions([{ ...ring, fillRule: 'nonzero' }]).region;
}

describe('booleans', () => {
  test('two squares that overlap in a quarter', () => {
    const [a, b] = [square(0, 0, 10), square(5, 5, 10)];
    expect(operations.map((operation) => signedArea(booleans(a, b, operation)))).toEqual([175, 25, 75, 150]);
  });

  test('a region with itself and with nothing', () => {
    const a = square(0, 0, 10);
    const nothing = resolveRegions([]).region;
    expect(operations.map((operation) => signedArea(booleans(a, a, operation)))).toEqual([100, 100, 0, 0]);
    expect(operations.map((operation) => signedArea(booleans(a, nothing, operation)))).toEqual([
      100, 0, 100, 100,
    ]);
    expect(operations.map((operation) => signedArea(booleans(nothing, a, operation)))).toEqual([
      100, 0, 0, 100,
    ]);
  });

  // the other engine stops with an error where many edges meet or overlap: it is asked about free places only, and not trusted where it stops there too
  test.each(latticeNames.slice(0, 1))('areas agree with another engine on %s', (lattice) => {
    fc.assert(
      fc.property(drawnShapes(lattice), drawnShapes(lattice), (first, second) => {
        const a = resolveRegions(first).region;
        const b = resolveRegions(second).region;
        const [theirA, theirB] = [asMultiPolygon(a), asMultiPolygon(b)];
        for (const operation of operations) {
          const mine = booleans(a, b, operation);
          expect(cleanRegionFaults(mine)).toEqual([]);
          // each engine may bend edges by its rounding, ours by half a millionth of a mm
          const bound = 1e-6 * (perimeter(a) + perimeter(b)) + 1e-9;
          const theirs = areaByOther(operation, theirA, theirB);
          fc.pre(theirs !== undefined);
          expect(Math.abs(signedArea(mine) - (theirs as number))).toBeLessThan(bound);
        }
      }),
      cases(100),
    );
  });

  test.each(latticeNames)('areas add up on %s', (lattice) => {
    fc.assert(
      fc.property(drawnShapes(lattice), drawnShapes(lattice), (first, second) => {
        const a = resolveRegions(first);
        const b = resolveRegions(second);
        const [union, intersect, subtract, xor] = operations.map((operation) =>
          signedArea(booleans(a.region, b.region, operation)),
        );
        const bound =
          16 * Math.max(a.toleranceMm, b.toleranceMm) * (perimeter(a.region) + perimeter(b.region)) + 1e-9;
        const [areaA, areaB] = [signedArea(a.region), signedArea(b.region)];
        expect(Math.abs(union! + intersect! - areaA - areaB)).toBeLessThan(bound);
        expect(Math.abs(subtract! + intersect! - areaA)).toBeLessThan(bound);
        expect(Math.abs(union! - intersect! - xor!)).toBeLessThan(bound);
      }),
      cases(40),
    );
  });
});
