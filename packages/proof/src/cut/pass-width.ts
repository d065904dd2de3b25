import { radiusAt } from '@pourproof/cutting';
import type { Job } from '@pourproof/job';
import { cutterOf } from './cutter-of.ts';

/**
 * Width in mm at the face of the narrowest groove that a job's bits cut in one pass at its depth: of a V as
 * deep as it may go, of others their own.
 */
export function passWidthMm({ bits, depthMm }: Pick<Job, 'bits' | 'depthMm'>): number {
  return Math.min(
    ...bits.map((bit) => {
      const cutter = cutterOf(bit);
      return 2 * radiusAt(cutter, Math.min(depthMm, cutter.cuttingLengthMm));
    }),
  );
}
