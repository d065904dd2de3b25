import { largestMixG } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { resinFixes } from './resin-fixes.ts';

/** A layer that takes more resin than may be mixed in one cup: the cup would heat itself until it smokes. */
export const cupTooLarge: Check = {
  code: 'cup-too-large',
  run: (measured) => {
    const { job, pour } = measured;
    const limitG = largestMixG(job.rows.resin, job.shopTempC);
    const layerG = Math.max(0, ...pour.colours.map(layerOf));
    if (layerG <= limitG) {
      return null;
    }
    return {
      code: 'cup-too-large',
      severity: 'caution',
      where: [],
      measured: { value: layerG, quantity: 'mass', unit: 'g' },
      limit: { value: limitG, quantity: 'mass', unit: 'g' },
      because: [...job.rows.resin.largestMixG.because, 'resin-chemistry-page', 'own-inference'],
      fix: { options: fixes(measured, layerG) },
    };
  },
};

/** What a layer takes, as its cups are weighed: the amounts to mix add up to the same. */
function layerOf({ massG, cup, count, layers }: Measured['pour']['colours'][number]): number {
  const [partA = 0, partB = 0] = cup.partsG;
  const weighedG = (partA + partB) * count.batches;
  return (weighedG > 0 ? weighedG : massG) / Math.max(1, layers.count);
}

function fixes(measured: Measured, layerG: number): Fix[] {
  const { job, pour } = measured;
  return [
    { do: 'more-cups', cups: Math.max(...pour.colours.map(({ count }) => count.coolCups)), clears: false },
    ...resinFixes(measured, (resin) => layerG <= largestMixG(resin, job.shopTempC)),
  ];
}
