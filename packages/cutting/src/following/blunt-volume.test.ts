import { medialAxis, reachedArea } from '@pourproof/geometry';
import type { CleanRegion } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon, between, magnitude } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { cleanFrom } from '../../../../tests/support/shapes/clean-from.ts';
import { veeCutter } from '../cutters/cutter-makers.ts';
import { bluntVolume } from './blunt-volume.ts';
import { FollowingProfile } from './following-profile.ts';

const STEPS = 12;

/** Expects the bounds to meet what slices say, each exact: between two of them the cut is no smaller than the lower one, no larger than the upper. */
function expectMeetsSlices(
  region: CleanRegion,
  includedRad: number,
  tipFlatMm: number,
  depthMm: number,
): void {
  const axis = medialAxis(region);
  const diameterMm = tipFlatMm + 4 * depthMm * Math.tan(includedRad / 2);
  const profile = new FollowingProfile(veeCutter({ includedRad, diameterMm, tipFlatMm }), depthMm);
  const { value, error } = bluntVolume(axis, profile);
  const slices = Array.from({ length: STEPS + 1 }, (_, k) => {
    const inset = (profile.reachMm - profile.tipFlatMm) * (k / STEPS) * (1 - 1e-12);
    return reachedArea(axis, profile.tipFlatMm + inset, profile.tipFlatMm);
  });
  const total = slices.reduce((sum, mm2) => sum + mm2, 0);
  const rounding = 1e-9 + 1e-7 * total;
  expect(value - error).toBeLessThan(((total - slices[STEPS]!) * depthMm) / STEPS + rounding);
  expect(value + error).toBeGreaterThan(((total - slices[0]!) * depthMm) / STEPS - rounding);
}

test('flat tips of hardly sloped flanks: what discs share in a narrow part is bounded at every clearance', () => {
  const tips = fc.tuple(anyPolygon, magnitude(-3.5, -0.3), magnitude(-0.7, 0.8), between(0.05, 4));
  fc.assert(
    fc.property(
      tips.filter(([{ coords }]) => coords.length < 60),
      ([region, includedRad, tipMm, depthMm]) => {
        expectMeetsSlices(region, includedRad, tipMm, depthMm);
      },
    ),
    cases(60),
  );
});

test('beside holes that are hardly nearer to each other than the tip is wide, two discs are nearly one', () => {
  const diamond = (x: number): number[] => [x - 3.8, 15, x, 11.2, x + 3.8, 15, x, 18.8];
  const plate = cleanFrom([[0, 0, 40, 0, 40, 30, 0, 30]], [diamond(10), diamond(20), diamond(30)]);
  for (const includedRad of [1e-3, 1e-2, 0.1]) {
    expectMeetsSlices(plate, includedRad, 2.5, 4.1);
  }
});
