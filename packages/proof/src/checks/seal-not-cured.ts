import type { Job } from '@pourproof/job';
import { cureSpeed } from '@pourproof/materials';
import type { Check } from './check.ts';

/** A pour on a seal that is not ready: the seal lifts, mixes with the colour, or lets it through. */
export const sealNotCured: Check = {
  code: 'seal-not-cured',
  run: ({ job }) => {
    const { seal } = job.rows;
    if (job.coats === 0 || seal.curve.value.length === 0) {
      return null;
    }
    const speed = speedOf(job);
    const ready = seal.readyHours.low / speed;
    if (job.sealHours >= ready) {
      return null;
    }
    const tacky = seal.tackyHours;
    const bonds = tacky !== null && job.sealHours >= tacky.low / speed && job.sealHours <= tacky.high / speed;
    return {
      code: 'seal-not-cured',
      // pouring on a tacky coat of the same chemistry bonds well and is often intended; it only stops less
      // colour
      severity: bonds ? 'note' : 'caution',
      where: [],
      measured: { value: job.sealHours, quantity: 'time', unit: 'h' },
      limit: { value: ready, quantity: 'time', unit: 'h' },
      because: [...seal.readyHours.because],
      fix: {
        options: [{ do: 'wait', hours: Math.ceil((ready - job.sealHours) * 10) / 10, clears: true }],
      },
    };
  },
};

/** Drying is not taken to speed up with warmth: it depends on air more than on heat. */
function speedOf(job: Job): number {
  return job.rows.seal.hardens === 'reaction' ? cureSpeed(job.shopTempC) : 1;
}
