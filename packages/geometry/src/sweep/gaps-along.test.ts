import { booleans, resolveRegions } from '@pourproof/arrangement';
import { packRings, perimeter, ringsBounds, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnShapes, latticeNames } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { endGrainLength } from '../measure/grain-length.ts';
import { gapsAlong, type WoodGap } from './gaps-along.ts';
import { sweepAlong } from './sweep-along.ts';
import { sweptArea, woodAlong } from './wood-along.ts';

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

// spikes thinner than the grid, which no bit cuts, are dropped here and cast their shadow there
const coarse = latticeNames.filter((name) => !name.includes('less than the grid'));

describe.each(coarse)('the area of the wood that random shapes on %s reach along the fibre', (lattice) => {
  test('is that of the swept band for every length, and of its part on the board', () => {
    const lengths = fc.uniqueArray(fc.double({ min: 0, max: 6, noNaN: true }), {
      minLength: 3,
      maxLength: 3,
    });
    fc.assert(
      fc.property(
        drawnShapes(lattice),
        lengths,
        fc.double({ min: 0, max: 3, noNaN: true }),
        (shapes, some, grainRad) => {
          const { region, toleranceMm } = resolveRegions(shapes);
          fc.pre(region.ringEnds.length > 0);
          const [minX, minY, maxX, maxY] = ringsBounds(region);
          const corners = [minX - 1, minY - 2, maxX + 1, minY - 2, maxX + 1, maxY + 3, minX - 1, maxY + 3];
          const board = resolveRegions([{ ...packRings([corners]), fillRule: 'nonzero' }]).region;
          const wood = woodAlong(region, grainRad);
          const onBoard = woodAlong(region, grainRad, board);
          for (const lengthMm of some) {
            const band = sweepAlong(region, grainRad, lengthMm);
            const bound = 16 * toleranceMm * (perimeter(region) + lengthMm * region.coords.length) + 1e-9;
            expect(Math.abs(sweptArea(wood, lengthMm) - band.areaMm2)).toBeLessThan(bound);
            const part = signedArea(booleans(band.region, board, 'intersect'));
            expect(Math.abs(sweptArea(onBoard, lengthMm) - part)).toBeLessThan(2 * bound);
          }
        },
      ),
      cases(20),
    );
  });
});
