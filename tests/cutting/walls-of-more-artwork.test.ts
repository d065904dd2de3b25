import { booleans } from '@pourproof/arrangement';
import { carve, flatCutter } from '@pourproof/cutting';
import { arcRingsLength, medialAxis } from '@pourproof/geometry';
import type { CleanRegion } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon, magnitude } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';

test('of more artwork a flat bit makes no more wall than twice the area that it adds over its radius', () => {
  const cutOf = (region: CleanRegion, diameterMm: number): { areaMm2: number; wallMm: number } => {
    const steps = [{ cutter: flatCutter(diameterMm), way: 'clear' as const }];
    const { areaMm2, outline } = carve(medialAxis(region), steps, { depthMm: 1 });
    return { areaMm2, wallMm: arcRingsLength(outline) };
  };
  const few = anyPolygon.filter(({ coords }) => coords.length < 80);
  fc.assert(
    fc.property(few, few, magnitude(-1, 0.6), (more, other, diameterMm) => {
      const less = booleans(more, other, 'intersect');
      const [y, x] = [cutOf(more, diameterMm), cutOf(less, diameterMm)];
      const most = x.wallMm + (4 / diameterMm) * (y.areaMm2 - x.areaMm2);
      expect(y.wallMm).toBeLessThan(most + 1e-6 * (1 + most));
    }),
    cases(25),
  );
});
