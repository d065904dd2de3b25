import { flatClearFill } from '@pourproof/materials';
import { formatLength } from '@pourproof/plane';
import type { FixOption } from '../report/report.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';

/** From this share of clear seal in the section on, a stroke reads as pale (our choice: half). */
const MOSTLY_CLEAR = 0.5;

/** Strokes that are cut but fill with clear seal, so that little or no colour finds room. */
export const ghostStroke: Check = {
  code: 'ghost-stroke',
  title: 'The seal fills this stroke',
  run: ({ job, bitMm, sealFilm, narrowerThan }) => {
    // t (w + 2 D) / (w D) = share, solved for the width
    const room = MOSTLY_CLEAR * job.depthMm - sealFilm;
    const limit = room > 0 ? (2 * sealFilm * job.depthMm) / room : Number.POSITIVE_INFINITY;
    if (sealFilm === 0 || limit <= bitMm) {
      return null;
    }
    const pale = narrowerThan(Number.isFinite(limit) ? limit : 1000).filter(
      (stretch) =>
        stretch.kind === 'stroke' &&
        stretch.lengthMm > bitMm &&
        stretch.narrowestMm >= bitMm - job.toleranceMm,
    );
    const [first] = pale;
    if (first === undefined) {
      return null;
    }
    const narrowest = pale.reduce((least, each) => Math.min(least, each.narrowestMm), first.narrowestMm);
    const share = flatClearFill(narrowest, job.depthMm, sealFilm).clearShare;
    return {
      code: 'ghost-stroke',
      severity: share >= 1 ? 'stop' : 'caution',
      where: pale.map((stretch) => placeOfPath(stretch.atMm, stretch.path)),
      measured: { value: 100 * share, unit: '% clear' },
      limit: { value: 100 * MOSTLY_CLEAR, unit: '% clear' },
      because: ['own-inference', ...job.rows.seal.wetFilmMm.because],
      fix: { options: fixes(narrowest, job.depthMm, sealFilm, job.coats, limit) },
    };
  },
  advise: (finding, unit) => ({
    headline: `${finding.where.length === 1 ? 'One stroke is' : `${finding.where.length} strokes are`} up to ${Math.round(finding.measured.value)} % filled with clear seal before any colour goes in.`,
    why: 'Seal stays on both walls and drains to the floor; in a narrow slot that film is most of the room, and the stroke comes out pale or clear: a ghost.',
    fixes: finding.fix.options.map((option) =>
      option.do === 'fewer-coats'
        ? `Give ${option.value} ${Number(option.value) === 1 ? 'coat' : 'coats'} instead, blown or wicked out of the slots.`
        : `Widen the stroke by ${formatLength(Number(option.value), unit)}.`,
    ),
  }),
};

function fixes(
  narrowest: number,
  depthMm: number,
  filmMm: number,
  coats: number,
  limit: number,
): FixOption[] {
  const options: FixOption[] = [];
  for (let fewer = coats - 1; fewer >= 1; fewer--) {
    if (flatClearFill(narrowest, depthMm, (filmMm * fewer) / coats).clearShare < MOSTLY_CLEAR) {
      options.push({ do: 'fewer-coats', value: fewer, unit: 'coats', clears: true });
      break;
    }
  }
  if (Number.isFinite(limit)) {
    options.push({
      do: 'widen',
      value: Math.ceil((limit - narrowest) * 100) / 100,
      unit: 'mm',
      clears: true,
    });
  } else if (options.length === 0) {
    options.push({ do: 'fewer-coats', value: 1, unit: 'coats', clears: false });
  }
  return options;
}
