import { cureSpeed, mixByMass, type Resin, type Scale, smallestBatchG } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import { batchCount } from '../pour/batch-count.ts';
import type { ColourPour } from '../pour/pour-plan.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { resinFixes } from './resin-fixes.ts';
import { scaleFor } from './scale-for.ts';

/** More pockets than a cup fills before it thickens, while the mix is too small to be weighed in more cups. */
export const pourHurried: Check = {
  code: 'pour-hurried',
  run: (measured) => {
    const { job, pour } = measured;
    const hurried = pour.colours.filter(({ count }) => count.isHurried);
    const [first] = hurried;
    if (first === undefined) {
      return null;
    }
    const worst = hurried.reduce(
      (most, each) => (pocketsPerCup(each) > pocketsPerCup(most) ? each : most),
      first,
    );
    return {
      code: 'pour-hurried',
      severity: 'caution',
      where: [],
      measured: { value: Math.ceil(pocketsPerCup(worst)), quantity: 'count', unit: '1' },
      limit: { value: worst.count.pocketsPerBatch, quantity: 'count', unit: '1' },
      because: [...job.rows.resin.potLifeMin.because, 'own-inference'],
      fix: { options: fixes(measured, hurried) },
    };
  },
};

function pocketsPerCup({ pockets, layers, count }: ColourPour): number {
  return (pockets * Math.max(1, layers.count)) / count.batches;
}

/** A finer scale lets the mix be parted into more cups, a slower resin leaves time; each is tried on every hurried colour. */
function fixes(measured: Measured, hurried: readonly ColourPour[]): Fix[] {
  const { job } = measured;
  const isCalm = (resin: Resin, scale: Scale): boolean =>
    hurried.every(
      ({ pockets, massG, layers }) =>
        !batchCount(
          pockets,
          resin.potLifeMin.value / cureSpeed(job.shopTempC),
          massG,
          smallestBatchG({
            resolutionG: scale.resolutionG.value,
            ratio: mixByMass({ volumeMl: 0, wastePct: 0 }, resin).ratioByWeight,
            tolerancePct: resin.ratioTolerancePct.value,
            zeroedBetween: false,
          }),
          Math.max(1, layers.count),
        ).isHurried,
    );
  const { resin, scale } = job.rows;
  const finer = scaleFor(job, (each) => isCalm(resin, each));
  return [
    ...(finer === null ? [] : [{ do: 'use-scale' as const, scale: finer, clears: true }]),
    ...resinFixes(measured, (each) => isCalm(each, scale)),
  ];
}
