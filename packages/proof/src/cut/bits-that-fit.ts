import { radiusAt } from '@pourproof/cutting';
import { type MedialAxis, narrowStretches, separateParts } from '@pourproof/geometry';
import type { Bit, Job } from '@pourproof/job';
import { cutterOf } from './cutter-of.ts';

/**
 * The bits of a job as they enter a flattened artwork. Curves that become short straight lines waver by the tolerance on either side: a
 * stroke or dot drawn exactly as wide as a bit is narrower here and there, and would be cut in shreds or not at all. Where the artwork has
 * such a one, the bit is taken as narrower by as much; elsewhere bits are as given. Beside a V other bits only clear its floor.
 */
export function bitsThatFit(
  axis: MedialAxis,
  { bits, depthMm, toleranceMm }: Pick<Job, 'bits' | 'depthMm' | 'toleranceMm'>,
): readonly Bit[] {
  if (bits.some(({ kind }) => kind === 'vee')) {
    return bits;
  }
  return bits.map((bit) => {
    const cutter = cutterOf(bit);
    const widthMm = 2 * radiusAt(cutter, Math.min(depthMm, cutter.cuttingLengthMm));
    return fits(axis, widthMm, toleranceMm) === widthMm ? bit : narrower(bit, 2 * toleranceMm);
  });
}

/** The width with which a bit enters a flattened artwork, see {@link bitsThatFit}. */
export function fits(axis: MedialAxis, widthMm: number, toleranceMm: number): number {
  const least = widthMm - 2 * toleranceMm;
  const isAsWide = (mm: number): boolean => mm >= least && mm < widthMm;
  const wavers =
    least > 0 &&
    (narrowStretches(axis, widthMm).some(
      ({ kind, narrowestMm }) => kind === 'stroke' && isAsWide(narrowestMm),
    ) ||
      separateParts(axis).some(({ strokeMm, widthMm: dotMm }) => strokeMm === 0 && isAsWide(dotMm)));
  return wavers ? least : widthMm;
}

function narrower(bit: Bit, byMm: number): Bit {
  switch (bit.kind) {
    case 'flat':
    case 'ball':
    case 'bull':
      return { ...bit, diameterMm: bit.diameterMm - byMm };
    case 'taper':
      return { ...bit, tipDiameterMm: bit.tipDiameterMm - byMm };
    default:
      return bit;
  }
}
