import { bitSize } from '@pourproof/job';
import { formatLength } from '@pourproof/plane';
import type { FindingWords } from './finding-words.ts';
import { scaleArtwork } from './parts-of-sentences.ts';
import { partsText } from './place-text.ts';

/** Words of tips, corners and waists that the bit does not follow to their end. */
export const cutEndsShort: FindingWords = {
  title: 'The cut ends short of the drawing',
  headline: ({ where, severity }, _reader, { measured: worst }) => {
    const ends = partsText(where);
    const how = where.length === 1 ? `ends ${worst} short` : `end short, the worst by ${worst}`;
    return severity === 'note'
      ? `${ends} ${how}, which is hardly seen at reading distance.`
      : `${ends} ${how}: that much of the drawing stays wood.`;
  },
  why: ({ severity }) =>
    severity === 'stop'
      ? 'A round bit turns back where the walls come closer than its width; here more than half of a taper stays wood, so that the stroke is lost.'
      : 'A round bit turns back where the walls come closer than its width: tips end before they run out, and corners come out round.',
  fixes: {
    'use-bit': ({ diameterMm, leftShortMm, clears }, { units }) =>
      [
        `Add a ${bitSize(diameterMm, units)} flat bit`,
        leftShortMm === undefined ? '' : `: the worst then ends ${formatLength(leftShortMm, units)} short`,
        clears ? '.' : ', as far as common bits go.',
      ].join(''),
    'use-tip': () => 'Use a V that comes to a point.',
    scale: (fix) => scaleArtwork(fix).replace(/\.$/u, ': beside the larger shape the loss is slight.'),
    'redraw-ends': () =>
      'Look at them on the picture: draw them as far as the bit goes, or leave them if they may end there.',
  },
  measuredHow: () => 'short',
};
