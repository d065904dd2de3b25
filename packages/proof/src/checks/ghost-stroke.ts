import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { clearShareAt, MOSTLY_CLEAR, type PalePart, paleBelow, paleParts } from './pale-share.ts';
import { sortedBySize } from './places.ts';
import { proposed } from './proposed.ts';

/** Strokes and dots that are cut but fill with clear seal, so that little or no colour finds room. */
export const ghostStroke: Check = {
  code: 'ghost-stroke',
  run: (measured) => {
    const { job, sealFilm } = measured;
    const pale = paleParts(measured, sealFilm);
    if (pale.length === 0) {
      return null;
    }
    const share = Math.max(...pale.map((each) => clearShareAt(measured, each, sealFilm)));
    return {
      code: 'ghost-stroke',
      severity: share >= 1 ? 'stop' : 'caution',
      where: sortedBySize(pale.map(({ place }) => place)),
      measured: { value: 100 * share, quantity: 'share', unit: '%' },
      limit: { value: 100 * MOSTLY_CLEAR, quantity: 'share', unit: '%' },
      because: ['own-inference', ...job.rows.seal.wetFilmMm.because],
      fix: proposed(() => fixes(measured, pale)),
    };
  },
};

function fixes(measured: Measured, pale: readonly PalePart[]): Fix[] {
  const { job, sealFilm } = measured;
  const options: Fix[] = [];
  for (let fewer = job.coats - 1; fewer >= 1; fewer--) {
    const filmMm = (sealFilm * fewer) / job.coats;
    if (pale.every((each) => clearShareAt(measured, each, filmMm) < MOSTLY_CLEAR)) {
      options.push({ do: 'fewer-coats', coats: fewer, clears: true });
      break;
    }
  }
  const byMm = Math.max(...pale.map(({ form, widthMm }) => paleBelow(measured, form, sealFilm) - widthMm));
  if (Number.isFinite(byMm)) {
    options.push({
      do: 'widen',
      what: pale.every(({ form }) => form === 'dot') ? 'dot' : 'stroke',
      byMm: Math.ceil(byMm * 100) / 100,
      clears: true,
    });
  } else if (options.length === 0) {
    options.push({ do: 'fewer-coats', coats: 1, clears: false });
  }
  return options;
}
