import type { FindingWords } from './finding-words.ts';

/** Words of a mix too small to be stirred true. */
export const mixTooSmall: FindingWords = {
  title: 'Too little to stir true',
  headline: (_finding, _reader, { measured, limit }) =>
    `${measured} of resin cannot be stirred true: it takes ${limit} even in a small cup.`,
  why: () =>
    'What clings unmixed to the wall and the floor of the cup is then a larger share than the ratio may be off by, and the fill stays soft in places.',
  fixes: {
    'mix-more': ({ massG }) => `Mix ${massG} g at least and use the rest for a test piece.`,
  },
};
