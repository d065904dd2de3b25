import type { FindingWords } from './finding-words.ts';

/** Words of a mix too small for its scale. */
export const batchTooSmall: FindingWords = {
  title: 'Too little to weigh accurately',
  headline: (_finding, _reader, { measured, limit }) =>
    `${measured} is too little to weigh accurately on this scale: it takes ${limit}.`,
  why: () =>
    'Each reading is off by up to half a step; in a small batch that throws the mix ratio further off than the resin tolerates, and it stays soft.',
  fixes: {
    'use-scale': ({ scale }, { materials }) => `Weigh on a ${materials.scales[scale]?.name ?? scale}.`,
    'zero-between': ({ enoughG }) => `Zero the scale again between A and B: then ${enoughG} g is enough.`,
    'mix-more': ({ massG }) => `Mix ${massG} g and use the rest for a test piece.`,
  },
};
