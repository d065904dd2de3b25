import type { Finding } from '@pourproof/proof';
import type { FindingWords } from './finding-words.ts';
import { basisText, couponBefore, sealBetter, subject } from './parts-of-sentences.ts';

/** Words of walls that colour is likely to bleed from. */
export const highBleedWall: FindingWords = {
  title: 'High bleed risk on this wall',
  headline: (finding, _reader, { measured, limit }) =>
    `${subject(finding, 'stretch of wall', 'stretches of wall')} likely to bleed: ${measured} at worst (${basisText(finding)}${bandText(finding)}), against a limit of ${limit}.`,
  why: () =>
    'Where a wall cuts across the fibres, their open ends draw colour in like straws. Levelling will not remove bleed: the ends are open from face to floor, and the sloping wall of a V only thins it.',
  fixes: {
    ...couponBefore,
    ...sealBetter,
    turn: ({ deg, sparedPct, clears }) =>
      `Turn the artwork ${deg}° counter-clockwise on the board: ${sparedPct} % less end grain in the walls${clears ? '' : ', though the walls that remain at risk need a seal'}.`,
  },
  advice: ({ fix }) =>
    fix.options.some((fix) => fix.do !== 'test-coupon')
      ? []
      : [
          'No seal on the list brings it below that: choose a wood whose pores are few or plugged, or cut test slots in the same board and look.',
        ],
};

/** How far the travel may lie off, in words; a wood without a prior of its own says so. */
function bandText({ basis, bandFactor }: Finding): string {
  if (basis === 'calibrated') {
    return '';
  }
  return bandFactor === undefined
    ? '; anything from a fifth of that to five times as much is possible'
    : `; this wood has no prior of its own and is taken by likeness to others: anything from ÷${Math.round(bandFactor)} to ×${Math.round(bandFactor)} is possible`;
}
