import type { FindingWords } from './finding-words.ts';
import { hoursText } from './parts-of-sentences.ts';

/** Words of a seal that is poured on too soon. */
export const sealNotCured: FindingWords = {
  title: 'The seal has not cured yet',
  headline: (_finding, _reader, { measured, limit }) =>
    `The seal has ${measured} before the pour; at this temperature it needs ${limit}.`,
  why: () => 'A seal that is still wet lifts, mixes with the colour or lets it through into the pores.',
  fixes: {
    wait: ({ hours, warmthHelps }) =>
      `Wait ${hoursText(hours)} longer${warmthHelps ? ', or warm the shop: ten degrees halve the wait' : ''}.`,
  },
};
