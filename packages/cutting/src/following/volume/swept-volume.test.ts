import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import type { CleanRegion } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../../tests/support/lane.ts';
import { contactSum } from '../../cells/contact-sum.ts';
import type { Cutter } from '../../cutters/cutter.ts';
import {
  ballCutter,
  bullNoseCutter,
  profileCutter,
  taperedBallCutter,
  veeCutter,
} from '../../cutters/cutter-makers.ts';
import { FollowingProfile } from '../following-profile.ts';
import { sweptVolume } from './swept-volume.ts';

const CUTTERS: readonly Cutter[] = [
  veeCutter({ includedRad: 1, diameterMm: 9, tipRadiusMm: 0.3 }),
  veeCutter({ includedRad: 0.5, diameterMm: 9, tipRadiusMm: 0.5 }),
  ballCutter(1),
  ballCutter(2.5),
  taperedBallCutter({ tipDiameterMm: 0.5, sideRad: 0.2, diameterMm: 6 }),
  bullNoseCutter(0.8, 0.3),
  profileCutter([
    [0, 0],
    [0.1, 0.3],
    [0.6, 0.7],
    [2, 1],
  ]),
];

function regionOf(points: readonly (readonly [number, number])[]): CleanRegion {
  const coords = Float64Array.from(points.flat());
  return resolveRegions([{ coords, ringEnds: Uint32Array.of(points.length), fillRule: 'evenodd' }]).region;
}

test('the lower bound on the volume is at most the upper one, and at least the volume by own normals', () => {
  // hundredths of a millimetre
  const along = fc.integer({ min: 0, max: 400 }).map((k) => k / 100);
  const point = fc.tuple(along, along);
  fc.assert(
    fc.property(
      fc.array(point, { minLength: 3, maxLength: 14 }),
      fc.constantFrom(...CUTTERS),
      fc.double({ min: 0.1, max: 2, noNaN: true }),
      (points, cutter, limitMm) => {
        const region = regionOf(points);
        fc.pre(region.ringEnds.length > 0);
        const axis = medialAxis(region);
        const { toHeightMm } = cutter.pieces.findLast((piece) => piece.toRadiusMm > piece.fromRadiusMm)!;
        const profile = new FollowingProfile(cutter, Math.min(limitMm, toHeightMm));
        const below = (minMm: number): number =>
          contactSum(axis, minMm, 1e-9, () => ({
            segment: (h) => profile.segmentMm2(h),
            vertex: (h) => profile.vertexMm3(h),
            kinks: profile.kinksMm,
          }));
        const { upperMm3, gainMm3, integralErrorMm3 } = sweptVolume(axis, profile, 1e-7);
        const alone = below(profile.tipFlatMm) - below(profile.reachMm);
        expect(gainMm3).toBeGreaterThan(-integralErrorMm3 - 1e-8);
        expect(alone + gainMm3).toBeLessThan(upperMm3 + integralErrorMm3 + 1e-8);
      },
    ),
    cases(150),
  );
});
