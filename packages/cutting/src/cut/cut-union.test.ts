import { medialAxis } from '@pourproof/geometry';
import { expect, test } from 'vitest';
import { cleanFrom, rectangle } from '../../../../tests/support/shapes/clean-from.ts';
import { veeCutter } from '../cutters/cutter-makers.ts';
import { FollowingProfile } from '../following/following-profile.ts';
import { RoundedTipCut } from '../following/rounded-tip-cut.ts';
import { CutUnion } from './cut-union.ts';

test('two rounded tips one after the other cut all of the face, whichever comes first', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 30, 10)]));
  const tip = (tipRadiusMm: number): RoundedTipCut => {
    const cutter = veeCutter({ includedRad: 1, diameterMm: 20, tipRadiusMm });
    return new RoundedTipCut(axis, new FollowingProfile(cutter, 2), 0.005);
  };
  for (const cuts of [
    [tip(0.25), tip(0.4)],
    [tip(0.4), tip(0.25)],
  ]) {
    const { value, error } = new CutUnion(cuts, 0.005).sliceArea(0);
    expect(value).toBeCloseTo(300, 9);
    // joined outlines are on a grid: so much of it along the outline
    expect(error).toBeLessThan(80 * 2e-6);
  }
});
