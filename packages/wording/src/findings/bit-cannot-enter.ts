import { bitSize } from '@pourproof/job';
import { formatLength } from '@pourproof/plane';
import type { FindingWords } from './finding-words.ts';
import { scaleArtwork, subject } from './parts-of-sentences.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of strokes that no bit enters. */
export const bitCannotEnter: FindingWords = {
  title: 'The bit cannot enter here',
  headline: (finding, { units }) => {
    const { measured, limit, fix } = finding;
    const parts = subject(finding, 'part', 'parts', ['', '']).trim();
    const fits = formatLength(measured.value, units);
    const takes = fix.options.some((option) => option.clears)
      ? `nothing over ${fits} fits everywhere`
      : `the tightest of them takes ${fits} at most`;
    const [now, size] =
      limit.quantity === 'tip-width'
        ? ['finest V of this job has a tip of', bitSize(limit.value, units)]
        : ['smallest bit of this job is', `${bitSize(limit.value, units)} across`];
    return `${parts} of the artwork will stay wood: the ${now} ${size}, and ${takes}.`;
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
  measuredHow: ({ measured }) => (measured.quantity === 'tip-width' ? 'wide' : ''),
};
