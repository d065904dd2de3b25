import { bleedClass, pourLayers, type Resin, rowsAtHandFirst } from '@pourproof/materials';
import { radians } from '@pourproof/plane';
import { travelIn } from '../board/block-measures.ts';
import { highestSideways } from '../board/wall-exposure.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';

const CLASSES = ['clean', 'slight', 'moderate', 'severe'] as const;

/**
 * The first other resin of the list, of those at hand if there is one, that does what is asked, can be poured in this shop, takes no more layers and stains no wood worse by class than the job's
 * own; empty where none does.
 */
export function resinFixes(measured: Measured, isEnough: (resin: Resin) => boolean): Fix[] {
  const { job } = measured;
  const other = rowsAtHandFirst(job.materials.resins, job.materials.atHand?.resins).find(
    ([id, resin]) =>
      id !== job.resin &&
      isEnough(resin) &&
      standsShop(resin, measured) &&
      takesNoMoreLayers(resin, measured) &&
      bleedsNoWorse(resin, measured),
  );
  return other === undefined ? [] : [{ do: 'use-resin', resin: other[0], clears: true }];
}

/** Warm enough to cure, cool enough to be poured. */
function standsShop({ minTempC, maxTempC }: Resin, { job: { shopTempC } }: Measured): boolean {
  return shopTempC >= minTempC.value && shopTempC <= maxTempC.value;
}

function takesNoMoreLayers({ deepestPourMm }: Resin, { job, maxDepth, pour }: Measured): boolean {
  return pourLayers(maxDepth + job.overpourMm, deepestPourMm.value).count <= Math.max(1, pour.layers.count);
}

function bleedsNoWorse(resin: Resin, { job, blocks, shape }: Measured): boolean {
  return blocks.every(({ block, travel, exposedLengthMm }) => {
    const share = highestSideways({ diveRad: radians(block.diveDeg), leanRad: shape.leanRad });
    const classOf = (medianMm: number): number => CLASSES.indexOf(bleedClass(medianMm * share));
    const after = travelIn(block, { ...job, rows: { ...job.rows, resin } });
    return exposedLengthMm === 0 || classOf(after.medianMm) <= classOf(travel.medianMm);
  });
}
