import { formatLength } from '@pourproof/plane';
import type { FindingWords } from './finding-words.ts';
import { basisText, hoursText, sealText, subject } from './parts-of-sentences.ts';

/** Words of walls that colour is likely to bleed from. */
export const highBleedWall: FindingWords = {
  title: 'High bleed risk on this wall',
  headline: (finding, { units }) =>
    `${subject(finding, 'stretch of wall', 'stretches of wall')} likely to bleed: about ${formatLength(finding.measured.value, units)} at worst (${basisText(finding)}${finding.basis === 'calibrated' ? '' : '; anything from a fifth of that to five times as much is possible'}), against a limit of ${formatLength(finding.limit.value, units)}.`,
  why: () =>
    'Where a wall cuts across the fibres, their open ends draw colour in like straws. Levelling will not remove bleed: the ends are open from face to floor, and the sloping wall of a V only thins it.',
  fixes: {
    'change-seal': (fix, reader) =>
      `Seal with ${sealText(fix, reader)}, and leave it ${hoursText(fix.hours)} before the colour.`,
    turn: ({ deg, sparedPct }) =>
      `Turn the artwork ${deg}° counter-clockwise on the board: ${sparedPct} % less end grain in the walls, though the walls that remain at risk need a seal.`,
  },
  advice: ({ fix }) =>
    fix.options.length > 0
      ? []
      : [
          'No seal on the list brings it below that: choose a denser wood, or cut test slots in the same board and look.',
        ],
};
