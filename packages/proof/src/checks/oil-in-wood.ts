import { oilCleaning } from '@pourproof/materials';
import type { Check } from './check.ts';

/** Oil or wax in the board: nothing bonds to it, so it is a stop with the cleaning steps and never a score. */
export const oilInWood: Check = {
  code: 'oil-in-wood',
  title: 'Oil or wax in the wood',
  run: ({ job, blocks }) => {
    const oily = blocks.filter(({ block }) => block.row.pores.oily);
    if (!job.isOiled && oily.length === 0) {
      return null;
    }
    return {
      code: 'oil-in-wood',
      severity: job.isOiled ? 'stop' : 'caution',
      where: [],
      measured: { value: job.isOiled ? 1 : oily.length, unit: job.isOiled ? 'oiled board' : 'oily wood' },
      limit: { value: 0, unit: job.isOiled ? 'oiled board' : 'oily wood' },
      because: [...oilCleaning.because, ...new Set(oily.flatMap(({ block }) => block.row.pores.because))],
      fix: {
        options: oilCleaning.value.map((step) => ({ do: 'clean', value: step, unit: 'step', clears: false })),
      },
    };
  },
  advise: (finding) => ({
    headline:
      finding.severity === 'stop'
        ? 'This board was oiled or waxed: neither seal nor resin will hold until it is clean.'
        : 'This wood is oily by nature: wipe it just before the seal.',
    why: 'Oil keeps resin from wetting the wood and softens its cure; sanding alone leaves oil in the pores, and heat drives it out again. Nothing else on this sheet counts before that.',
    fixes: finding.fix.options.map((option) => String(option.value)),
  }),
};
