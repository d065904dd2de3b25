import { limits } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { Check } from './check.ts';
import { dotsOf } from './pale-share.ts';
import { placeOfPoint, placeOfStretch } from './places.ts';

/** Strokes and dots that are cut but so narrow that the seal film and levelling leave little or no colour to see. */
export const strokeTooNarrowToLevel: Check = {
  code: 'stroke-too-narrow-to-level',
  run: (measured) => {
    const limit =
      measured.shape.includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee;
    const thin = [...thinStrokes(measured, limit.value), ...thinDots(measured, limit.value)];
    if (thin.length === 0) {
      return null;
    }
    const narrowest = Math.min(...thin.map(({ widthMm }) => widthMm));
    const isUnseen = narrowest < limits.faintWidth.value;
    return {
      code: 'stroke-too-narrow-to-level',
      severity: isUnseen ? 'stop' : 'caution',
      where: thin.map(({ place }) => place),
      measured: { value: narrowest, quantity: 'width', unit: 'mm' },
      limit: { value: limit.value, quantity: 'width', unit: 'mm' },
      because: [
        ...new Set([
          'local-thickness' as const,
          ...limit.because,
          ...(isUnseen ? limits.faintWidth.because : []),
        ]),
      ],
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

interface Thin {
  readonly widthMm: number;
  readonly place: FindingPlace;
}

/** What the bit cannot enter is not cut at all and has its own finding. */
function thinStrokes({ bitMm, job, narrowerThan }: Measured, limitMm: number): Thin[] {
  return narrowerThan(limitMm)
    .filter(
      (stretch) =>
        stretch.kind === 'stroke' &&
        stretch.narrowestMm >= bitMm - job.toleranceMm &&
        // shorter than it is wide is a waist, not a stroke (our choice)
        stretch.lengthMm > limitMm,
    )
    .map((stretch) => ({ widthMm: stretch.narrowestMm, place: placeOfStretch(stretch) }));
}

function thinDots({ axis, bitMm, job }: Measured, limitMm: number): Thin[] {
  return dotsOf({ axis })
    .filter(({ widthMm }) => widthMm >= bitMm - 2 * job.toleranceMm && widthMm < limitMm)
    .map(({ atMm, widthMm }) => ({ widthMm, place: placeOfPoint(atMm, { what: 'dot', widthMm }) }));
}
