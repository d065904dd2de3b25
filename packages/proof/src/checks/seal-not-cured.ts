import type { Job } from '@pourproof/job';
import { cureSpeed } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Check } from './check.ts';
import { usesSolvent } from './uses-solvent.ts';

/** Kelvin below the warmest shop that the resin stands from which warming it is still worth the trouble (our choice). */
const ROOM_TO_WARM_K = 2;

/** A pour on a seal that is not ready: the seal lifts, mixes with the colour, or lets it through. */
export const sealNotCured: Check = {
  code: 'seal-not-cured',
  run: (measured) => {
    const { job } = measured;
    const { seal } = job.rows;
    if (job.coats === 0 || seal.curve.value.length === 0) {
      return null;
    }
    // a coat of the same chemistry bonds best while it is tacky, so nobody need wait for its cure; what it lets through is told elsewhere
    const ready = seal.tackyHours ?? seal.readyHours;
    const enough = ready.low / sealSpeed(job);
    if (job.sealHours >= enough) {
      return null;
    }
    return {
      code: 'seal-not-cured',
      severity: 'caution',
      where: [],
      measured: { value: job.sealHours, quantity: 'time', unit: 'h' },
      limit: { value: enough, quantity: 'time', unit: 'h' },
      because: [...ready.because],
      fix: {
        options: [
          {
            do: 'wait',
            hours: Math.ceil((enough - job.sealHours) * 10) / 10,
            warmthHelps: warmthHelps(measured),
            clears: true,
          },
        ],
      },
    };
  },
};

/** Drying is not taken to speed up with warmth: it depends on air more than on heat. */
export function sealSpeed({ rows, shopTempC }: Job): number {
  return rows.seal.hardens === 'reaction' ? cureSpeed(shopTempC) : 1;
}

/** Only where the seal cures faster in the warm, the resin stands more warmth, and no solvent is about. */
function warmthHelps(measured: Measured): boolean {
  const { rows, shopTempC } = measured.job;
  return (
    rows.seal.hardens === 'reaction' &&
    shopTempC + ROOM_TO_WARM_K <= rows.resin.maxTempC.low &&
    !usesSolvent(measured)
  );
}
