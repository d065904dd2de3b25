import { limits } from '@pourproof/materials';
import { formatLength } from '@pourproof/plane';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';
import { noLess } from './way-length.ts';

/** Strokes that are cut but so narrow that the seal film and levelling leave little or no colour to see. */
export const strokeTooNarrowToLevel: Check = {
  code: 'stroke-too-narrow-to-level',
  title: 'Stroke too narrow to level safely',
  run: (measured) => {
    const limit =
      measured.shape.includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee;
    const thin = measured.narrowerThan(limit.value).filter(
      (stretch) =>
        stretch.kind === 'stroke' &&
        // what the bit can't enter is not cut at all and is told by its own finding
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
      where: thin.map((stretch) => placeOfPath(stretch.atMm, stretch.path)),
      measured: { value: narrowest, unit: 'mm' },
      limit: { value: limit.value, unit: 'mm' },
      because: ['local-thickness', ...limit.because],
      fix: {
        options: [
          { do: 'scale', value: Math.ceil((limit.value / narrowest) * 100) / 100, unit: '×', clears: true },
          {
            do: 'widen',
            value: Math.ceil((limit.value - narrowest) * 100) / 100,
            unit: 'mm',
            clears: true,
          },
        ],
      },
    };
  },
  advise: (finding, unit) => ({
    headline: `${finding.where.length === 1 ? 'One stroke is' : `${finding.where.length} strokes are`} down to ${formatLength(finding.measured.value, unit)} wide; below ${formatLength(finding.limit.value, unit)} colour rarely survives sealing and levelling.`,
    why: 'The seal coat takes its film from both walls, and levelling takes depth, of a V width too; a narrow slot keeps too little colour to read, and its edges chip first.',
    fixes: finding.fix.options.map((option) =>
      option.do === 'scale'
        ? `Scale the artwork by ${Number(option.value).toFixed(2)}.`
        : `Widen the stroke by ${noLess(Number(option.value), unit)}.`,
    ),
  }),
};
