import { pourLayers } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { resinFixes } from './resin-fixes.ts';

/** A pocket deeper than this resin may be poured at once: it heats itself, smokes, foams or cracks. */
export const pourTooDeep: Check = {
  code: 'pour-too-deep',
  run: (measured) => {
    const { job, cutArea, maxDepth, pour } = measured;
    if (cutArea === 0 || pour.layers.count <= 1) {
      return null;
    }
    const { deepestPourMm } = job.rows.resin;
    return {
      code: 'pour-too-deep',
      severity: 'caution',
      where: [],
      measured: { value: maxDepth + job.overpourMm, quantity: 'depth', unit: 'mm' },
      limit: { value: deepestPourMm.value, quantity: 'depth', unit: 'mm' },
      because: [...deepestPourMm.because, 'resin-chemistry-page'],
      fix: { options: fixes(measured) },
    };
  },
};

function fixes(measured: Measured): Fix[] {
  const { job, maxDepth, pour } = measured;
  return [
    { do: 'pour-in-layers', layers: pour.layers.count, clears: true },
    ...resinFixes(
      measured,
      (resin) => pourLayers(maxDepth + job.overpourMm, resin.deepestPourMm.value).count === 1,
    ),
  ];
}
