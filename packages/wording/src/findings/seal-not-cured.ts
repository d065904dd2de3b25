import type { FindingWords } from './finding-words.ts';
import { hoursText } from './parts-of-sentences.ts';

/** Words of a seal that is poured on too soon. */
export const sealNotCured: FindingWords = {
  title: 'The seal has not cured yet',
  headline: ({ measured, limit }) =>
    `The seal has ${hoursText(measured.value)} before the pour; at this temperature it needs ${hoursText(limit.value)}.`,
  why: ({ severity }) =>
    severity === 'note'
      ? 'While it is tacky the next coat bonds to it without sanding, but it stops less colour than a cured one.'
      : 'A seal that is still soft lifts, mixes with the colour or lets it through into the pores.',
  fixes: {
    wait: ({ hours }) => `Wait ${hoursText(hours)} longer, or warm the shop.`,
  },
};
