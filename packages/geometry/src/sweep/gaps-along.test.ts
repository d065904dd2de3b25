import { resolveRegions } from '@pourproof/arrangement';
import { packRings, perimeter, ringsBounds } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnShapes, latticeNames } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { endGrainLength } from '../measure/grain-length.ts';
import { gapsAlong, type WoodGap } from './gaps-along.ts';
import { sweepAlong } from './sweep-along.ts';

/** Integral over a gap of how much two bands of a length each are longer than it. */
function overlapArea(gap: WoodGap, lengthMm: number): number {
  const a = 2 * lengthMm - gap.lengthFrom;
  const b = 2 * lengthMm - gap.lengthTo;
  const across = gap.to - gap.from;
  if (a >= 0 && b >= 0) {
    return (across * (a + b)) / 2;
  }
  if (a <= 0 && b <= 0) {
    return 0;
  }
  const positive = Math.max(a, b);
  return (across * positive * positive) / (2 * Math.abs(a - b));
}

describe.each(latticeNames)('the wood along y between random shapes on %s', (lattice) => {
  test('accounts for all that the swept band lacks to length × grain length', () => {
    fc.assert(
      fc.property(drawnShapes(lattice), fc.double({ min: 0.05, max: 4, noNaN: true }), (shapes, lengthMm) => {
        const { region, toleranceMm } = resolveRegions(shapes);
        fc.pre(region.ringEnds.length > 0);
        const [minX, minY, maxX, maxY] = ringsBounds(region);
        const board = packRings([
          [minX - 20, minY - 20, maxX + 20, minY - 20, maxX + 20, maxY + 20, minX - 20, maxY + 20],
        ]);
        // azimuth −90°: the fibre runs towards +y
        const grainRad = -Math.PI / 2;
        const { areaMm2 } = sweepAlong(region, grainRad, lengthMm);
        let expected = lengthMm * endGrainLength(region, grainRad);
        for (const gap of gapsAlong(region, board)) {
          expected -= gap.rings[0] < 0 ? 0 : overlapArea(gap, lengthMm);
        }
        // every edge and its copy may bend by the tolerance
        const bound = 16 * toleranceMm * (perimeter(region) + lengthMm * region.coords.length) + 1e-9;
        expect(Math.abs(areaMm2 - expected)).toBeLessThan(bound);
      }),
      cases(60),
    );
  });
});
