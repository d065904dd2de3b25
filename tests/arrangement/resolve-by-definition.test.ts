import { resolveRegions } from '@pourproof/arrangement';
import { perimeter, type Region, ringsBounds, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnShapes, latticeNames } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { edgeDistance, windingAt } from '../support/oracles/point-in-rings.ts';

function isPainted(shapes: readonly Region[], x: number, y: number): boolean {
  return shapes.some((shape) => {
    const winding = windingAt(shape, x, y);
    return shape.fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
  });
}

/** Whether a point is farther from every drawn edge than an edge can have been moved. */
function isClearOfEdges(shapes: readonly Region[], x: number, y: number, reach: number): boolean {
  return shapes.every((shape) => edgeDistance(shape, x, y) > reach);
}

function reversedShape(shape: Region): Region {
  const { coords, ringEnds } = shape;
  const out = new Float64Array(coords.length);
  let from = 0;
  for (const to of ringEnds) {
    for (let i = from; i < to; i++) {
      const j = from + to - 1 - i;
      out[2 * j] = coords[2 * i]!;
      out[2 * j + 1] = coords[2 * i + 1]!;
    }
    from = to;
  }
  return { coords: out, ringEnds, fillRule: shape.fillRule };
}

describe.each(latticeNames)('shapes drawn on %s', (lattice) => {
  test('become a clean region that is inside exactly where some shape paints', () => {
    fc.assert(
      fc.property(
        drawnShapes(lattice),
        fc.array(
          fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
          {
            minLength: 20,
            maxLength: 20,
          },
        ),
        (shapes, places) => {
          const { region, toleranceMm } = resolveRegions(shapes);
          expect(cleanRegionFaults(region)).toEqual([]);
          const boxes = shapes.map(ringsBounds);
          const minX = Math.min(...boxes.map((b) => b[0]));
          const minY = Math.min(...boxes.map((b) => b[1]));
          const maxX = Math.max(...boxes.map((b) => b[2]));
          const maxY = Math.max(...boxes.map((b) => b[3]));
          for (const [u, v] of places) {
            const x = minX + u * (maxX - minX);
            const y = minY + v * (maxY - minY);
            // an edge moves by at most the tolerance each time a point is put on it; eight times is more than any of these needs
            if (isClearOfEdges(shapes, x, y, 8 * toleranceMm)) {
              expect(windingAt(region, x, y)).toBe(isPainted(shapes, x, y) ? 1 : 0);
            }
          }
        },
      ),
      cases(150),
    );
  });

  test('give the same area in any order, turned back to front, and when resolved again', () => {
    fc.assert(
      fc.property(drawnShapes(lattice), (shapes) => {
        const { region, toleranceMm } = resolveRegions(shapes);
        // edges may bend by the tolerance: the area moves by less than that along all of them
        const drawn = shapes.reduce((sum, shape) => sum + perimeter(shape), 0);
        const bound = 4 * toleranceMm * drawn + 1e-12;
        const area = signedArea(region);
        const other = resolveRegions([...shapes].reverse().map(reversedShape));
        expect(Math.abs(signedArea(other.region) - area)).toBeLessThanOrEqual(bound);
        const again = resolveRegions([{ ...region, fillRule: 'nonzero' }]);
        expect(again.crossingCount).toBe(0);
        expect(again.largestMoveMm).toBe(0);
        expect([...again.region.coords].sort()).toEqual([...region.coords].sort());
      }),
      cases(80),
    );
  });
});
