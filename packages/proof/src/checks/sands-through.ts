import { limits } from '@pourproof/materials';
import { formatLength } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import type { FixOption } from '../report/report.ts';
import type { Check } from './check.ts';
import { placeOfPath, placeOfPoint } from './places.ts';

/** Colour shallower than this lets the floor show through. */
const OPAQUE = limits.opaqueDepth;

/** Levelling that takes all colour off, or leaves it too shallow to hide the floor. */
export const sandsThrough: Check = {
  code: 'sands-through',
  title: 'Levelling sands through the colour',
  run: (measured) => {
    const { job, levelling } = measured;
    if (levelling.firstLostAt === null || levelling.leftMm >= OPAQUE.value) {
      return null;
    }
    const left = Math.max(0, levelling.leftMm);
    return {
      code: 'sands-through',
      severity: levelling.leftMm <= 0 ? 'stop' : 'caution',
      where: placesOf(measured),
      measured: { value: left, unit: 'mm' },
      limit: { value: OPAQUE.value, unit: 'mm' },
      because: [...OPAQUE.because, ...job.rows.resin.shrinkagePct.because],
      fix: { options: fixes(measured) },
    };
  },
  advise: (finding, unit) => ({
    headline:
      finding.severity === 'stop'
        ? 'Levelling as planned takes all colour off the narrowest strokes.'
        : `Levelling as planned leaves ${formatLength(finding.measured.value, unit)} of colour; below ${formatLength(finding.limit.value, unit)} the floor shows through.`,
    why: 'What is left is the depth of the cut, less the seal on the floor, less what curing shrinks, less the low spots of the board, less what levelling takes.',
    fixes: finding.fix.options.map((option) =>
      option.do === 'deepen'
        ? `Cut ${formatLength(Number(option.value), unit)} deeper.`
        : `Take ${formatLength(Number(option.value), unit)} less off the face.`,
    ),
  }),
};

/** The strokes that are lost; where colour only becomes thin, the place where it does first. */
function placesOf({ levelling, bitMm, narrowerThan }: Measured): ReturnType<typeof placeOfPoint>[] {
  const { lostBelowMm, firstLostAt } = levelling;
  const lost =
    lostBelowMm > bitMm && Number.isFinite(lostBelowMm)
      ? narrowerThan(lostBelowMm).filter((stretch) => stretch.kind === 'stroke')
      : [];
  return lost.length > 0
    ? lost.map((stretch) => placeOfPath(stretch.atMm, stretch.path))
    : [placeOfPoint(firstLostAt ?? [0, 0])];
}

function fixes({ job, levelling, sealFilm, strokes, bitMm }: Measured): FixOption[] {
  const missing = OPAQUE.value - levelling.leftMm;
  // with depth the level falls further and the longer walls drain more seal: of each mm deeper this much is gained
  const narrowest = Math.max(bitMm, strokes.narrowestMm ?? bitMm);
  const gain = 1 - job.rows.resin.shrinkagePct.value / 100 - (2 * sealFilm) / narrowest;
  const options: FixOption[] = [];
  if (gain > 0) {
    options.push({ do: 'deepen', value: Math.ceil((missing / gain) * 100) / 100, unit: 'mm', clears: true });
  }
  if (job.levelMm > missing) {
    options.push({ do: 'level-less', value: Math.ceil(missing * 100) / 100, unit: 'mm', clears: true });
  }
  return options;
}
