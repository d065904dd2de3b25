import { type Bounds, packRings, type Region, ringCoords, ringsBounds } from '@pourproof/plane';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { intersectRegions, subtractRegions, uniteRegions } from './clip-region.ts';
import { nearRings } from './near-rings.ts';

const point = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }));
const ring = fc.array(point, { minLength: 3, maxLength: 14 }).map((points) => points.flat());
const region = fc
  .tuple(
    fc.array(ring, { minLength: 1, maxLength: 4 }),
    fc.constantFrom('nonzero' as const, 'evenodd' as const),
  )
  .map(([rings, fillRule]): Region => ({ ...packRings(rings), fillRule }));

// no ring has a corner at such a place, and no edge between whole numbers below 40 passes within 1e-4 of it
const place = fc
  .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }))
  .map(([x, y]): [number, number] => [x + 0.4142135, y + 0.7320508]);

/** How often the rings run around a point, by crossings of the ray to +x. */
function windingNumber(rings: Region, x: number, y: number): number {
  let turns = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const c = ringCoords(rings, k);
    for (let i = 0; i < c.length; i += 2) {
      const j = (i + 2) % c.length;
      const [ax, ay, bx, by] = [c[i]!, c[i + 1]!, c[j]!, c[j + 1]!];
      if (ay < y !== by < y && ax + ((y - ay) / (by - ay)) * (bx - ax) > x) {
        turns += by > ay ? 1 : -1;
      }
    }
  }
  return turns;
}

function isInside(shape: Region, x: number, y: number): boolean {
  const turns = windingNumber(shape, x, y);
  return shape.fillRule === 'evenodd' ? turns % 2 !== 0 : turns !== 0;
}

test('winding numbers in the box stay as they are, with no more points', () => {
  fc.assert(
    fc.property(region, place, place, place, (shape, a, b, [x, y]) => {
      const box: Bounds = [
        Math.min(a[0], b[0]),
        Math.min(a[1], b[1]),
        Math.max(a[0], b[0]),
        Math.max(a[1], b[1]),
      ];
      const near = nearRings(shape, box);
      expect(near.coords.length).toBeLessThanOrEqual(shape.coords.length);
      const [px, py] = [Math.min(box[2], Math.max(box[0], x)), Math.min(box[3], Math.max(box[1], y))];
      expect(windingNumber(near, px, py)).toBe(windingNumber(shape, px, py));
    }),
    cases(1000),
  );
});

test('a ring apart from the box goes, and what runs far outside of it is cut short', () => {
  const zigzag = Array.from({ length: 50 }, (_, i) => [100 + (i % 2), i]).flat();
  const shape: Region = {
    ...packRings([
      [0, 0, ...zigzag, 0, 50],
      [200, 0, 210, 0, 210, 10],
    ]),
    fillRule: 'nonzero',
  };
  expect([...nearRings(shape, [10, 10, 20, 20]).coords]).toEqual([0, 0, 101, 9, 101, 49, 0, 50]);
  expect(nearRings(shape, ringsBounds(shape))).toBe(shape);
});

test('clips are what their definition says at every point, whatever the fill rules', () => {
  fc.assert(
    fc.property(region, region, fc.array(place, { minLength: 8, maxLength: 8 }), (a, b, places) => {
      const [both, rest, all] = [intersectRegions(a, b), subtractRegions(a, [b]), uniteRegions([a, b])];
      for (const [x, y] of places) {
        const [inA, inB] = [isInside(a, x, y), isInside(b, x, y)];
        expect(isInside(both, x, y)).toBe(inA && inB);
        expect(isInside(rest, x, y)).toBe(inA && !inB);
        expect(isInside(all, x, y)).toBe(inA || inB);
      }
    }),
    cases(500),
  );
});
