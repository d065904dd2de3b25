import { mixByMass, type Scale, smallestBatchG } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { FixOption } from '../report/report.ts';
import type { Check } from './check.ts';

/** A mix so small that the scale cannot split it within the ratio's tolerance. */
export const batchTooSmall: Check = {
  code: 'batch-too-small',
  title: 'The batch is too small to weigh',
  run: (measured) => {
    const { job, pour } = measured;
    const small = pour.colours
      .map((colour) => colour.massG / colour.count.batches)
      .filter((grams) => grams > 0 && grams < pour.smallestBatchG);
    if (small.length === 0) {
      return null;
    }
    const least = Math.min(...small);
    return {
      code: 'batch-too-small',
      // on a scale that nobody named, or where zeroing between the parts is enough, it is a reminder only
      severity: job.defaults.includes('weigh') || pour.smallestZeroedG <= least ? 'note' : 'caution',
      where: [],
      measured: { value: least, unit: 'g' },
      limit: { value: pour.smallestBatchG, unit: 'g' },
      because: [
        ...new Set([...job.rows.scale.resolutionG.because, ...job.rows.resin.ratioTolerancePct.because]),
      ],
      fix: { options: fixes(measured, least) },
    };
  },
  advise: (finding) => ({
    headline: `${finding.measured.value.toFixed(1)} g is less than this scale can split true: it needs ${(Math.ceil(finding.limit.value * 10) / 10).toFixed(1)} g.`,
    why: 'Each reading is off by up to half a step; in a small batch that moves the ratio beyond what the resin forgives, and it stays soft.',
    fixes: finding.fix.options.map((option) => {
      switch (option.do) {
        case 'use-scale':
          return `Weigh on a ${option.value}.`;
        case 'zero-between':
          return `Set the scale to zero between A and B: then ${option.value} g is enough.`;
        case 'mix-more':
          return `Mix ${option.value} g and keep the rest for a test piece.`;
        default:
          return `Mix for ${option.value} boards at once.`;
      }
    }),
  }),
};

function fixes({ job, pour }: Measured, least: number): FixOption[] {
  const options: FixOption[] = [];
  if (pour.smallestZeroedG <= least) {
    options.push({
      do: 'zero-between',
      value: Math.ceil(pour.smallestZeroedG * 10) / 10,
      unit: 'g',
      clears: true,
    });
  }
  const finer = Object.values(job.materials.scales)
    .filter((scale) => smallestOn(scale, job) <= least)
    .toSorted((a, b) => b.resolutionG.value - a.resolutionG.value)[0];
  if (finer !== undefined) {
    options.push({ do: 'use-scale', value: finer.name, unit: 'scale', clears: true });
  }
  options.push({ do: 'mix-more', value: Math.ceil(pour.smallestBatchG * 10) / 10, unit: 'g', clears: true });
  return options;
}

function smallestOn(scale: Scale, { rows }: Measured['job']): number {
  return smallestBatchG({
    resolutionG: scale.resolutionG.value,
    ratio: mixByMass({ volumeMl: 0, wastePct: 0 }, rows.resin).ratioByWeight,
    tolerancePct: rows.resin.ratioTolerancePct.value,
    zeroedBetween: false,
  });
}
