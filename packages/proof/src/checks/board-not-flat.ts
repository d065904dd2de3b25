import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** A face within this counts as flat, whatever levelling takes off, mm (our choice). */
const FLAT_ENOUGH_MM = 0.1;

/**
 * A face that rises and falls under the cut by more than levelling takes off: low spots keep a skin of resin,
 * high ones lose depth.
 */
export const boardNotFlat: Check = {
  code: 'board-not-flat',
  run: ({ job, heights, maxDepth, site }) => {
    if (heights === null) {
      return null;
    }
    const range = heights.highestMm - heights.lowestMm;
    // what is poured in a round is levelled again in the later ones, but the face has to be flat before the next is carved
    const limit = Math.max(job.levelMm / site.levellings, FLAT_ENOUGH_MM);
    if (range <= limit) {
      return null;
    }
    return {
      code: 'board-not-flat',
      severity: range >= maxDepth / 2 ? 'stop' : 'caution',
      where: [
        placeOfPoint(heights.lowestAt, { what: 'spot' }),
        placeOfPoint(heights.highestAt, { what: 'spot' }),
      ],
      measured: { value: range, quantity: 'height', unit: 'mm' },
      limit: { value: limit, quantity: 'height', unit: 'mm' },
      because: ['board-as-described', 'own-inference'],
      fix: {
        options: [{ do: 'flatten', byMm: Math.ceil((range - limit) * 100) / 100, clears: true }],
      },
    };
  },
};
