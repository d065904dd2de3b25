import { mistakenRatio } from '@pourproof/materials';
import type { Check } from './check.ts';

/** A mixing ratio by volume that was typed as one by weight, or the other way: the mix would stay soft. */
export const ratioMistaken: Check = {
  code: 'ratio-mistaken',
  run: ({ job, cutArea }) => {
    const mistaken = cutArea === 0 ? null : mistakenRatio(job.rows.resin);
    if (mistaken === null) {
      return null;
    }
    const { resin } = job.rows;
    return {
      code: 'ratio-mistaken',
      severity: 'stop',
      where: [],
      measured: { value: Math.abs(mistaken.hardenerOffPct), quantity: 'share', unit: '%' },
      limit: { value: resin.ratioTolerancePct.value, quantity: 'share', unit: '%' },
      because: [...new Set([...resin.ratioTolerancePct.because, 'resin-data-sheets' as const])],
      fix: {
        options: [
          {
            do: 'read-label',
            ratio: mistaken.entered === 'by-weight' ? 'by-volume' : 'by-weight',
            clears: false,
          },
        ],
      },
    };
  },
};
