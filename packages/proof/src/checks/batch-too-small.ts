import { mixByMass, type Scale, smallestBatchG } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { scaleFor } from './scale-for.ts';

/** A mix too small for the scale to weigh its parts within the ratio's tolerance. */
export const batchTooSmall: Check = {
  code: 'batch-too-small',
  run: (measured) => {
    const { job, pour } = measured;
    const small = pour.colours
      .map((colour) => colour.massG / colour.count.batches)
      .filter((grams) => grams > 0 && grams < pour.smallestBatchG);
    const least = Math.min(...small);
    // where the scale is not named, a finer one may well be at hand: the amounts say what this one needs
    if (small.length === 0 || (job.defaults.includes('weigh') && least >= finestG(job))) {
      return null;
    }
    return {
      code: 'batch-too-small',
      // only a reminder where the job does not name its scale, or where zeroing between the parts is enough
      severity: job.defaults.includes('weigh') || pour.smallestZeroedG <= least ? 'note' : 'caution',
      where: [],
      measured: { value: least, quantity: 'mass', unit: 'g' },
      limit: { value: pour.smallestBatchG, quantity: 'mass', unit: 'g' },
      because: [
        ...new Set([...job.rows.scale.resolutionG.because, ...job.rows.resin.ratioTolerancePct.because]),
      ],
      fix: { options: fixes(measured, least) },
    };
  },
};

function fixes({ job, pour }: Measured, least: number): Fix[] {
  const options: Fix[] = [];
  if (pour.smallestZeroedG <= least) {
    options.push({
      do: 'zero-between',
      enoughG: Math.ceil(pour.smallestZeroedG * 10) / 10,
      clears: true,
    });
  }
  const finer = scaleFor(job, (scale) => smallestOn(scale, job) <= least);
  if (finer !== null) {
    options.push({ do: 'use-scale', scale: finer, clears: true });
  }
  options.push({ do: 'mix-more', massG: Math.ceil(pour.smallestBatchG * 10) / 10, clears: true });
  return options;
}

/** Smallest batch in g on the finest scale of the list. */
function finestG(job: Measured['job']): number {
  return Math.min(...Object.values(job.materials.scales).map((scale) => smallestOn(scale, job)));
}

function smallestOn(scale: Scale, { rows }: Measured['job']): number {
  return smallestBatchG({
    resolutionG: scale.resolutionG.value,
    ratio: mixByMass({ volumeMl: 0, wastePct: 0 }, rows.resin).ratioByWeight,
    tolerancePct: rows.resin.ratioTolerancePct.value,
    zeroedBetween: false,
  });
}
