import { smallCupMm, smallestTrueMixG, unmixedFilmMm } from '@pourproof/materials';
import type { Check } from './check.ts';

/** Times the tolerance of the ratio that the unmixed film may be before it is more than a note (our choice). */
const GRAVE = 2;

/** A mix so small that what clings to the cup unmixed throws the ratio off, however it is weighed. */
export const mixTooSmall: Check = {
  code: 'mix-too-small',
  run: ({ job, pour }) => {
    const { ratioTolerancePct, densityMixedGPerMl } = job.rows.resin;
    const masses = pour.colours.map(({ massG, count }) => massG / count.batches).filter((grams) => grams > 0);
    const least = Math.min(...masses);
    if (masses.length === 0 || least >= pour.smallestTrueG) {
      return null;
    }
    const graveG = smallestTrueMixG(GRAVE * ratioTolerancePct.value, densityMixedGPerMl.value);
    return {
      code: 'mix-too-small',
      severity: least < graveG ? 'caution' : 'note',
      where: [],
      measured: { value: least, quantity: 'mass', unit: 'g' },
      limit: { value: pour.smallestTrueG, quantity: 'mass', unit: 'g' },
      because: [...new Set([...smallCupMm.because, ...unmixedFilmMm.because, ...ratioTolerancePct.because])],
      fix: { options: [{ do: 'mix-more', massG: Math.ceil(pour.smallestTrueG * 10) / 10, clears: true }] },
    };
  },
};
