import {
  ballCutter,
  bullNoseCutter,
  type Cutter,
  flatCutter,
  profileCutter,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import type { Bit } from '@pourproof/job';
import { radians } from '@pourproof/plane';

/** The cutter profile of a bit. */
export function cutterOf(bit: Bit): Cutter {
  const limits = bit.cuttingLengthMm === null ? {} : { cuttingLengthMm: bit.cuttingLengthMm };
  switch (bit.kind) {
    case 'flat':
      return flatCutter(bit.diameterMm, limits);
    case 'ball':
      return ballCutter(bit.diameterMm, limits);
    case 'bull':
      // a corner radius of half the diameter makes a ball
      return bit.cornerMm < bit.diameterMm / 2
        ? bullNoseCutter(bit.diameterMm, bit.cornerMm, limits)
        : ballCutter(bit.diameterMm, limits);
    case 'vee':
      return veeCutter({
        ...limits,
        includedRad: radians(bit.angleDeg),
        diameterMm: bit.diameterMm,
        tipFlatMm: bit.tipMm,
        tipRadiusMm: bit.tipRadiusMm,
      });
    case 'taper':
      return taperedBallCutter({
        ...limits,
        tipDiameterMm: bit.tipDiameterMm,
        sideRad: radians(bit.sideDeg),
        diameterMm: bit.diameterMm,
      });
    case 'profile':
      return profileCutter(
        bit.points.map(({ heightMm, diameterMm }) => [heightMm, diameterMm / 2]),
        limits,
      );
  }
}
