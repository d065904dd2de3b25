import type { FindingWords } from './finding-words.ts';

/** Words of more pigment than the cure stands. */
export const pigmentTooMuch: FindingWords = {
  title: 'More pigment than the cure stands',
  headline: ({ measured, limit }) =>
    `${Number(measured.value.toFixed(1))} % of the mix is pigment; beyond ${limit.value} % the cure suffers.`,
  why: () =>
    'Pigment takes no part in the cure, and the carrier of a paste thins it: too much leaves the colour soft. The label of the pigment comes first.',
  fixes: { 'less-pigment': ({ toPct }) => `Use no more than ${toPct} %, and test whether it hides.` },
};
