import { limits } from '@pourproof/materials';
import { thinResin } from '../rounds/thin-resin.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';

/** Cured resin of an earlier round that this one leaves so narrow that it chips. */
export const resinLeftThin: Check = {
  code: 'resin-left-thin',
  run: ({ cutRegion, site, shape }) => {
    if (site.filled.length === 0) {
      return null;
    }
    const limit = shape.includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee;
    const thin = thinResin(cutRegion, site.filled, limit.value);
    const [worst] = thin;
    if (worst === undefined) {
      return null;
    }
    return {
      code: 'resin-left-thin',
      severity: 'caution',
      where: thin.map(({ form, atMm, path, lengthMm, widthMm }) =>
        placeOfPath(atMm, path, { what: form, lengthMm, widthMm }),
      ),
      measured: { value: worst.widthMm, quantity: 'width', unit: 'mm' },
      limit: { value: limit.value, quantity: 'width', unit: 'mm' },
      because: ['local-thickness', ...limit.because],
      fix: {
        options: [
          {
            do: 'widen',
            what: 'stroke',
            byMm: Math.ceil((limit.value - worst.widthMm) * 100) / 100,
            clears: true,
          },
        ],
      },
    };
  },
};
