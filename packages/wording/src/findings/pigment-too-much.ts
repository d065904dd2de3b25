import type { FindingWords } from './finding-words.ts';

/** Words of more pigment or dye than the cure stands. */
export const pigmentTooMuch: FindingWords = {
  title: 'More colour than the cure stands',
  headline: (_finding, _reader, { measured, limit }) =>
    `${measured} of the mix is pigment or dye; beyond ${limit} the cure suffers.`,
  why: () =>
    'Colour takes no part in the cure; the carrier of a paste thins it and the solvent of an ink softens it: too much leaves the fill soft. The label of the colour comes first.',
  fixes: { 'less-pigment': ({ toPct }) => `Use no more than ${toPct} %, and test whether it is enough.` },
};
