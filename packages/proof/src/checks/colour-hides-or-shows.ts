import { bleedClassEndsMm, limits } from '@pourproof/materials';
import { byGrain } from '@pourproof/plane';
import { differenceIn } from '../colours/streaks.ts';
import type { Check } from './check.ts';
import { couponOf } from './coupon-fix.ts';
import { placeOfBlock } from './places.ts';

/**
 * Whether a streak of this colour hides in this wood or shows even on figured wood: a note on how much the
 * bleed matters. Silent between the two, where no streak is to be expected, and where a colour is not known.
 */
export const colourHidesOrShows: Check = {
  code: 'colour-hides-or-shows',
  run: ({ job, colourCuts, blocks }) => {
    const told = blocks
      .filter(
        ({ travel, exposedLengthMm }) => exposedLengthMm > 0 && travel.medianMm >= bleedClassEndsMm.value[0],
      )
      .flatMap((each) =>
        colourCuts.flatMap(({ colour }) => {
          const difference = differenceIn(colour, each.block);
          return difference === null ? [] : [{ each, difference }];
        }),
      )
      .toSorted(byGrain(({ difference }) => -difference));
    const [worst] = told;
    if (worst === undefined) {
      return null;
    }
    const { colourDifferencePlain: plain, colourDifferenceFigured: figured } = limits;
    const shows = worst.difference >= figured.value;
    if (!shows && worst.difference >= plain.value) {
      return null;
    }
    const limit = shows ? figured : plain;
    return {
      code: 'colour-hides-or-shows',
      severity: 'note',
      where: [placeOfBlock(worst.each)],
      measured: { value: worst.difference, quantity: 'colour-difference', unit: 'ΔE00' },
      limit: { value: limit.value, quantity: 'colour-difference', unit: 'ΔE00' },
      because: [...new Set([...limit.because, ...(worst.each.block.row.lab?.because ?? [])])],
      fix: { options: [couponOf(job, 1)] },
    };
  },
};
