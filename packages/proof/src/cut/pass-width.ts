import { radiusAt } from '@pourproof/cutting';
import type { Job } from '@pourproof/job';
import { cutterOf } from './cutter-of.ts';

/** Width at the face of the narrowest groove that a bit of the job cuts in one go at the job's depth, mm. */
export function passWidthMm({ bits, depthMm }: Pick<Job, 'bits' | 'depthMm'>): number {
  return Math.min(
    ...bits.map((bit) => {
      const cutter = cutterOf(bit);
      return 2 * radiusAt(cutter, Math.min(depthMm, cutter.cuttingLengthMm));
    }),
  );
}
