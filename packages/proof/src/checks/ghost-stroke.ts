import { clearShare } from '../levelling/stroke-margin.ts';
import { widthBelow } from '../levelling/width-below.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfStretch } from './places.ts';

/** Share of clear seal in the section from which a stroke reads as pale (our choice: half). */
const MOSTLY_CLEAR = 0.5;

/** Strokes that are cut but fill with clear seal, so that little or no colour finds room. */
export const ghostStroke: Check = {
  code: 'ghost-stroke',
  run: (measured) => {
    const { job, bitMm, sealFilm, narrowerThan } = measured;
    const limit = paleBelow(measured, sealFilm);
    if (sealFilm === 0 || limit <= bitMm) {
      return null;
    }
    const pale = narrowerThan(Number.isFinite(limit) ? limit : 1000).filter(
      (stretch) =>
        stretch.kind === 'stroke' &&
        // shorter than it is wide is a waist, not a stroke (our choice)
        stretch.lengthMm > Math.max(bitMm, stretch.narrowestMm) &&
        stretch.narrowestMm >= bitMm - job.toleranceMm,
    );
    const [first] = pale;
    if (first === undefined) {
      return null;
    }
    const narrowest = pale.reduce((least, each) => Math.min(least, each.narrowestMm), first.narrowestMm);
    const share = Math.min(1, shareAt(measured, narrowest, sealFilm));
    return {
      code: 'ghost-stroke',
      severity: share >= 1 ? 'stop' : 'caution',
      where: pale.map(placeOfStretch),
      measured: { value: 100 * share, quantity: 'share', unit: '%' },
      limit: { value: 100 * MOSTLY_CLEAR, quantity: 'share', unit: '%' },
      because: ['own-inference', ...job.rows.seal.wetFilmMm.because],
      fix: { options: fixes(measured, narrowest, limit) },
    };
  },
};

/** Share of clear seal in a stroke of this width; 0 where none is cut. */
function shareAt({ shape, bitMm }: Measured, widthMm: number, filmMm: number): number {
  // a stroke as wide as the bit is cut though its curves were flattened
  const section = shape.sectionAt(Math.max(bitMm, widthMm));
  return section === null ? 0 : clearShare(section, filmMm);
}

function paleBelow(measured: Measured, filmMm: number): number {
  return widthBelow((widthMm) => shareAt(measured, widthMm, filmMm) >= MOSTLY_CLEAR, measured.bitMm);
}

function fixes(measured: Measured, narrowest: number, limit: number): Fix[] {
  const { job, sealFilm } = measured;
  const options: Fix[] = [];
  for (let fewer = job.coats - 1; fewer >= 1; fewer--) {
    if (shareAt(measured, narrowest, (sealFilm * fewer) / job.coats) < MOSTLY_CLEAR) {
      options.push({ do: 'fewer-coats', coats: fewer, clears: true });
      break;
    }
  }
  if (Number.isFinite(limit)) {
    options.push({
      do: 'widen',
      what: 'stroke',
      byMm: Math.ceil((limit - narrowest) * 100) / 100,
      clears: true,
    });
  } else if (options.length === 0) {
    options.push({ do: 'fewer-coats', coats: 1, clears: false });
  }
  return options;
}
