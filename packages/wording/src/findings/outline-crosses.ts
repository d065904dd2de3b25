import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';

/** Words of outlines that cross. */
export const outlineCrosses: FindingWords = {
  title: 'Outlines cross',
  headline: ({ severity, measured }) =>
    severity === 'note'
      ? `Shapes overlap: their outlines cross in ${counted(measured.value, 'place')} and are cut as one.`
      : `An outline crosses itself; ${counted(measured.value, 'crossing')} in all.`,
  why: ({ severity }) =>
    severity === 'note'
      ? 'Overlapping shapes are taken as one pocket, which is usually what is meant (joined script, stacked shapes).'
      : 'Inside an outline that crosses itself the fill rule decides what is cut and what stays wood, and drawing programs disagree there.',
  fixes: {
    'merge-shapes': ({ crossings }) =>
      `Merge the shapes at the ${counted(crossings, 'marked crossing')} if that is not what you mean.`,
  },
  counted: ['crossing', 'crossings'],
};
