import { limits } from '@pourproof/materials';
import type { Check } from './check.ts';

/** Digits kept of a way out, as lengths are printed. */
const STEPS_PER_MM = 100;

/** Resin poured so low that it cures below the face, on a board from which too little is levelled to meet it. */
export const pourFlush: Check = {
  code: 'pour-flush',
  run: ({ job, cutArea, maxDepth }) => {
    const { shrinkagePct } = job.rows.resin;
    const dropMm = (maxDepth * shrinkagePct.value) / 100;
    const hollowMm = dropMm - job.overpourMm - job.levelMm;
    if (cutArea === 0 || hollowMm <= 0) {
      return null;
    }
    const neededMm = Math.ceil((dropMm - job.levelMm) * STEPS_PER_MM) / STEPS_PER_MM;
    return {
      code: 'pour-flush',
      severity: 'caution',
      where: [],
      measured: { value: job.overpourMm + job.levelMm, quantity: 'height', unit: 'mm' },
      limit: { value: dropMm, quantity: 'height', unit: 'mm' },
      because: [...shrinkagePct.because, ...limits.overpour.because],
      fix: {
        options: [{ do: 'pour-proud', overpourMm: Math.max(neededMm, limits.overpour.value), clears: true }],
      },
    };
  },
};
