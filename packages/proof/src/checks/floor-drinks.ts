import { bleedClassEndsMm, endGrainUptakeMl } from '@pourproof/materials';
import { byGrain, radians } from '@pourproof/plane';
import type { Check } from './check.ts';
import { couponFirst } from './coupon-fix.ts';
import { placeOfBlock } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** Exposure from which a floor counts as end grain: fibres that dive by 30° or more (our choice). */
const MIN_EXPOSURE = 0.5;

/** Floors in end grain that soak up resin: it goes missing, and the level falls. */
export const floorDrinks: Check = {
  code: 'floor-drinks',
  run: (measured) => {
    const { job, blocks, shape } = measured;
    // the walls of a V lean back and soak up resin downwards too
    const leans = shape.includedRad !== null;
    const [clean] = bleedClassEndsMm.value;
    const thirsty = blocks
      .filter(
        ({ block, travel, floorAreaMm2, wallAreaMm2 }) =>
          floorAreaMm2 + (leans ? wallAreaMm2 : 0) > 0 &&
          Math.sin(radians(block.diveDeg)) >= MIN_EXPOSURE &&
          travel.medianMm >= clean,
      )
      .toSorted(byGrain(({ travel }) => -travel.medianMm));
    const [worst] = thirsty;
    if (worst === undefined) {
      return null;
    }
    const uptake = thirsty.reduce(
      (sum, { floorExposedMm2, wallExposedMm2, travel }) =>
        sum + endGrainUptakeMl(floorExposedMm2 + (leans ? wallExposedMm2 : 0), travel.medianMm),
      0,
    );
    return {
      code: 'floor-drinks',
      severity: 'caution',
      where: thirsty.map(placeOfBlock),
      measured: { value: worst.travel.medianMm, quantity: 'length', unit: 'mm' },
      limit: { value: clean, quantity: 'length', unit: 'mm' },
      basis: worst.travel.basis,
      because: [...new Set([...worst.travel.sources, ...bleedClassEndsMm.because])],
      fix: {
        options: [
          ...couponFirst(job, worst.travel, { reachMm: worst.travel.medianMm, limitsMm: [clean] }),
          ...sealFixes(measured, worst, worst.travel.medianMm, clean),
          { do: 'top-up', volumeMl: Math.ceil(uptake * job.boards * 100) / 100, clears: false },
        ],
      },
    };
  },
};
