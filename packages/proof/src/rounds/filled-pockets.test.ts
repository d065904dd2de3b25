import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import { settleJob } from '@pourproof/job';
import { type CleanRegion, packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../../../../tests/arbitraries.ts';
import { rectangle } from '../../../../tests/support/drawing-of.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { carveJob } from '../cut/measure-cut.ts';
import { type FilledPocket, resinContact, SLOPED_SLABS, slabsOf } from './filled-pockets.ts';

const region = (x: number, y: number, width: number, height: number): CleanRegion =>
  resolveRegions([{ ...packRings([rectangle(x, y, width, height)]), fillRule: 'nonzero' }]).region;
const pocket = (bit: string, depthMm: number, cut: CleanRegion): FilledPocket => ({
  carving: carveJob(medialAxis(cut), { ...settleJob({ bit: [bit] }), depthMm }),
  loweredMm: 0.3,
  isUpright: false,
  toleranceMm: 0.005,
});

test('walls through pockets with sloping walls err by no more than a sixteenth of what stands in resin at the face', () => {
  const bit = fc.constantFrom('vee:60deg:1/2in', 'vee:90deg:1in', 'ball:4mm', 'taper:1mm:15deg:8mm');
  fc.assert(
    fc.property(bit, between(3, 20), between(1, 15), between(1, 4), (earlier, width, x, depthMm) => {
      const filled = [pocket(earlier, 3, region(0, 0, width, 20))];
      const cut = region(x, -5, 10, 15);
      const wallIn = (slabs: number): number => resinContact(cut, depthMm, filled, slabs).wall;
      const atFace = resinContact(cut, 1e-3, filled, 1).wall;
      expect(Math.abs(wallIn(SLOPED_SLABS) - wallIn(256))).toBeLessThanOrEqual(
        atFace / (2 * SLOPED_SLABS) + atFace / (2 * 256) + 1e-9,
      );
    }),
    cases(12),
  );
});

test('a wall square through a V groove stands in resin over the triangle that is left of it', () => {
  // 60°, 6 mm wide: 5.196 mm deep, limited to 3; the cut is as deep and as long as the groove is wide and crosses it
  const filled = [{ ...pocket('vee:60deg:1/2in', 3, region(0, 0, 6, 40)), loweredMm: 0 }];
  const cut = region(-7, 10, 20, 10);
  const { wall } = resinContact(cut, 3, filled);
  // two walls, each through a trapezium of 6 mm above and 6 − 2 · 3 tan 30° below
  const trapezium = (3 * (6 + 6 - 6 * Math.tan(Math.PI / 6))) / 2;
  expect(wall).toBeCloseTo((2 * trapezium) / (60 * 3), 4);
});

test('layers end at the floors of earlier pockets that a cut reaches, lowered as they were, and at its own', () => {
  const flat = { ...pocket('flat:2mm', 3, region(0, 0, 20, 20)), isUpright: true };
  const shallow = { ...pocket('flat:2mm', 1, region(0, 0, 20, 20)), isUpright: true };
  const ends = (filled: readonly FilledPocket[], depthMm: number) =>
    slabsOf(filled, depthMm, 2).map(({ fromMm, toMm }) => [fromMm, toMm].map((mm) => Number(mm.toFixed(9))));
  expect(ends([flat, shallow], 4)).toEqual([
    [0, 0.7],
    [0.7, 2.7],
    [2.7, 4],
  ]);
  // what lies deeper than the cut does not part it
  expect(ends([flat, shallow], 2)).toEqual([
    [0, 0.7],
    [0.7, 2],
  ]);
  expect(ends([{ ...flat, isUpright: false }], 2)).toEqual([
    [0, 1],
    [1, 2],
  ]);
});
