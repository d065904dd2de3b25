import type { FindingWords } from './finding-words.ts';

/** Words of more pigment than the cure stands. */
export const pigmentTooMuch: FindingWords = {
  title: 'More pigment than the cure stands',
  headline: (_finding, _reader, { measured, limit }) =>
    `${measured} of the mix is pigment; beyond ${limit} the cure suffers.`,
  why: () =>
    'Pigment takes no part in the cure, and the carrier of a paste thins it: too much leaves the colour soft. The label of the pigment comes first.',
  fixes: { 'less-pigment': ({ toPct }) => `Use no more than ${toPct} %, and test whether it hides.` },
};
