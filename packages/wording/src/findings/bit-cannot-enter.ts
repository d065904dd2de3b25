import { bitSize } from '@pourproof/job';
import type { FindingWords } from './finding-words.ts';
import { scaleArtwork } from './parts-of-sentences.ts';
import { placeText } from './place-text.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of strokes that no bit enters. */
export const bitCannotEnter: FindingWords = {
  title: 'The bit cannot enter here',
  headline: (finding, { units }) => {
    const { where, limit } = finding;
    const [largest] = where;
    const lost = largest === undefined ? 'part of the artwork' : placeText(largest, units, limit);
    const what =
      where.length === 1
        ? `A ${lost} is lost`
        : `${where.length} parts of the artwork are lost, the largest a ${lost}`;
    const bit =
      limit.quantity === 'tip-width'
        ? `the finest V of this job has a tip of ${bitSize(limit.value, units)}`
        : `the smallest bit of this job is ${bitSize(limit.value, units)} across`;
    return `${what}: ${bit}.`;
  },
  why: ({ limit }) =>
    limit.quantity === 'tip-width'
      ? 'The flat at the tip of a V cuts only where it fits inside the artwork; what is narrower is never touched, and no resin will fill it.'
      : 'A round bit cuts only where its whole disc fits inside the artwork; what is narrower is never touched, and no resin will fill it.',
  fixes: {
    'use-bit': ({ diameterMm, clears }, { units }) =>
      `Add a ${bitSize(diameterMm, units)} flat bit${clears ? ': it fits everywhere' : ''}.`,
    'use-tip': ({ tipMm }, { units }) =>
      tipMm === 0
        ? 'Use a V that comes to a point.'
        : `Use a V with a tip of ${noMore(tipMm, units)} or less.`,
    scale: (fix) => scaleArtwork(fix).replace(/\.$/u, ', and this bit fits everywhere.'),
    widen: ({ byMm }, { units }) => `Widen the narrow strokes by ${noLess(byMm, units)}.`,
  },
  measuredHow: () => 'wide at the narrowest',
};
