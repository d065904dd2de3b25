import { limits } from '@pourproof/materials';
import type { Check } from './check.ts';
import { placeOfStretch } from './places.ts';

/** Strokes that are cut but so narrow that the seal film and levelling leave little or no colour to see. */
export const strokeTooNarrowToLevel: Check = {
  code: 'stroke-too-narrow-to-level',
  run: (measured) => {
    const limit =
      measured.shape.includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee;
    const thin = measured.narrowerThan(limit.value).filter(
      (stretch) =>
        stretch.kind === 'stroke' &&
        // what the bit cannot enter is not cut at all and has its own finding
        stretch.narrowestMm >= measured.bitMm - measured.job.toleranceMm &&
        // shorter than it is wide is a waist, not a stroke (our choice)
        stretch.lengthMm > limit.value,
    );
    const [first] = thin;
    if (first === undefined) {
      return null;
    }
    const narrowest = thin.reduce((least, each) => Math.min(least, each.narrowestMm), first.narrowestMm);
    return {
      code: 'stroke-too-narrow-to-level',
      severity: 'caution',
      where: thin.map(placeOfStretch),
      measured: { value: narrowest, quantity: 'width', unit: 'mm' },
      limit: { value: limit.value, quantity: 'width', unit: 'mm' },
      because: ['local-thickness', ...limit.because],
      fix: {
        options: [
          { do: 'scale', factor: Math.ceil((limit.value / narrowest) * 100) / 100, clears: true },
          {
            do: 'widen',
            what: 'stroke',
            byMm: Math.ceil((limit.value - narrowest) * 100) / 100,
            clears: true,
          },
        ],
      },
    };
  },
};
