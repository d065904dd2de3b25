import type { Point } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { packArcRings, polygonFromArcs } from './arc-rings.ts';
import { deepestInCusp } from './deepest-in-cusp.ts';

const place = fc.double({ min: -1, max: 1, noNaN: true });

test('among discs alone the deepest point is as far from three of them as from none else, and none is farther', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(place, place), { minLength: 3, maxLength: 14 }), (centres) => {
      // a square bent a little inwards, as among arcs
      const rings = packArcRings([[-1, -1, -0.05, 1, -1, -0.05, 1, 1, -0.05, -1, 1, -0.05]]);
      const outline = polygonFromArcs(rings, 1e-4);
      const radius = 0.01;
      const nearest = ([x, y]: Point): number =>
        Math.min(...centres.map(([a, b]) => Math.hypot(x - a, y - b)));
      const { atMm, offMm } = deepestInCusp(rings, outline, centres, radius);
      if (offMm === 0) {
        return;
      }
      expect(nearest(atMm)).toBeCloseTo(radius + offMm, 9);
      // uphill from anywhere within no place of that kind is higher: a fine grid, where its own neighbours are all lower
      const step = 0.05;
      for (let x = -0.85; x < 0.86; x += step) {
        for (let y = -0.85; y < 0.86; y += step) {
          const here = nearest([x, y]);
          const around = Array.from(
            { length: 16 },
            (_, k): Point => [x + step * Math.cos((k * Math.PI) / 8), y + step * Math.sin((k * Math.PI) / 8)],
          );
          if (around.every((point) => nearest(point) < here - 1e-3)) {
            expect(radius + offMm).toBeGreaterThanOrEqual(here);
          }
        }
      }
    }),
    cases(30),
  );
});
