import { oilCleaning } from '@pourproof/materials';
import type { Check } from './check.ts';

/**
 * Oil or wax in the board: nothing bonds to it, so an oiled board is a stop with the cleaning steps, never a
 * mere score.
 */
export const oilInWood: Check = {
  code: 'oil-in-wood',
  run: ({ job, blocks }) => {
    const oily = blocks.filter(({ block }) => block.row.pores.oily);
    if (!job.isOiled && oily.length === 0) {
      return null;
    }
    return {
      code: 'oil-in-wood',
      severity: job.isOiled ? 'stop' : 'caution',
      where: [],
      measured: { value: job.isOiled ? 1 : oily.length, quantity: 'count', unit: '1' },
      limit: { value: 0, quantity: 'count', unit: '1' },
      because: [...oilCleaning.because, ...new Set(oily.flatMap(({ block }) => block.row.pores.because))],
      fix: {
        options: oilCleaning.value.map((_, k) => ({ do: 'clean', step: k + 1, clears: false })),
      },
    };
  },
};
