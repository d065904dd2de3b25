import type { Job } from '@pourproof/job';
import { cureSpeed } from '@pourproof/materials';
import type { Check } from './check.ts';

/** A pour on a seal that is not ready: it lifts, mixes with the colour, or lets it through. */
export const sealNotCured: Check = {
  code: 'seal-not-cured',
  title: 'The seal has not cured yet',
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
      // a tacky coat of the same chemistry bonds well and is often meant; it only stops less colour
      severity: bonds ? 'note' : 'caution',
      where: [],
      measured: { value: job.sealHours, unit: 'h' },
      limit: { value: ready, unit: 'h' },
      because: [...seal.readyHours.because],
      fix: {
        options: [
          { do: 'wait', value: Math.ceil((ready - job.sealHours) * 10) / 10, unit: 'h', clears: true },
        ],
      },
    };
  },
  advise: (finding) => ({
    headline: `The seal has ${hours(finding.measured.value)} before the pour; at this temperature it needs ${hours(finding.limit.value)}.`,
    why:
      finding.severity === 'note'
        ? 'While it is tacky the next coat bonds to it without sanding, but it stops less colour than a cured one.'
        : 'A seal that is still soft lifts, mixes with the colour or lets it through to the pores.',
    fixes: finding.fix.options.map(
      (option) => `Wait ${hours(Number(option.value))} longer, or warm the shop.`,
    ),
  }),
};

/** What dries is not sped up by warmth here: its time depends on air more than on heat. */
function speedOf(job: Job): number {
  return job.rows.seal.hardens === 'reaction' ? cureSpeed(job.shopTempC) : 1;
}

function hours(value: number): string {
  return `${Number(value.toFixed(1))} h`;
}
