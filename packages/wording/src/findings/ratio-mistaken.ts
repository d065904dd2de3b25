import type { FindingWords } from './finding-words.ts';

/** Words of a mixing ratio of the wrong kind. */
export const ratioMistaken: FindingWords = {
  title: 'A mixing ratio of the other kind',
  headline: ({ fix }, _reader, { measured, limit }) => {
    const isVolume = fix.options.some((each) => each.do === 'read-label' && each.ratio === 'by-volume');
    return `The ratio entered ${isVolume ? 'by weight' : 'by volume'} is what resins of this class have ${isVolume ? 'by volume' : 'by weight'}: the hardener would be ${measured} off, and ${limit} is what the cure stands.`;
  },
  why: () =>
    'The two parts differ in density by a fifth, so that a ratio by volume on a scale leaves the fill soft for good, and nothing mends that but digging it out.',
  fixes: {
    'read-label': ({ ratio }) =>
      ratio === 'by-volume'
        ? 'Read the label again: enter the ratio as ratioByVolume, or, if it is by weight, give both ratios or both densities.'
        : 'Read the label again: enter the ratio as ratioByWeight, or, if it is by volume, give both ratios or both densities.',
  },
};
