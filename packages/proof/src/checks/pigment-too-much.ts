import { limits } from '@pourproof/materials';
import type { Check } from './check.ts';

/** More pigment or dye than the cure stands. */
export const pigmentTooMuch: Check = {
  code: 'pigment-too-much',
  run: ({ job, cutArea }) => {
    const pigmentShare = job.colourant === 'dye' ? limits.dyeShare : limits.pigmentShare;
    if (cutArea === 0 || job.pigmentPct <= pigmentShare.high) {
      return null;
    }
    return {
      code: 'pigment-too-much',
      severity: 'caution',
      where: [],
      measured: { value: job.pigmentPct, quantity: 'share', unit: '%' },
      limit: { value: pigmentShare.high, quantity: 'share', unit: '%' },
      because: [...pigmentShare.because],
      fix: { options: [{ do: 'less-pigment', toPct: pigmentShare.high, clears: true }] },
    };
  },
};
