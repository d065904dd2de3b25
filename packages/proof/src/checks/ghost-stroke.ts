import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { clearShareAt, MOSTLY_CLEAR, paleBelow, paleStrokes } from './pale-share.ts';
import { placeOfStretch } from './places.ts';

/** Strokes that are cut but fill with clear seal, so that little or no colour finds room. */
export const ghostStroke: Check = {
  code: 'ghost-stroke',
  run: (measured) => {
    const { job, sealFilm } = measured;
    const limit = paleBelow(measured, sealFilm);
    const pale = paleStrokes(measured, sealFilm);
    const [first] = pale;
    if (first === undefined) {
      return null;
    }
    const narrowest = pale.reduce((least, each) => Math.min(least, each.narrowestMm), first.narrowestMm);
    const share = clearShareAt(measured, narrowest, sealFilm);
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

function fixes(measured: Measured, narrowest: number, limit: number): Fix[] {
  const { job, sealFilm } = measured;
  const options: Fix[] = [];
  for (let fewer = job.coats - 1; fewer >= 1; fewer--) {
    if (clearShareAt(measured, narrowest, (sealFilm * fewer) / job.coats) < MOSTLY_CLEAR) {
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
