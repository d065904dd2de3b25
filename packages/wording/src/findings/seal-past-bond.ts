import { formatLength } from '@pourproof/plane';
import type { FindingWords } from './finding-words.ts';
import { hoursText } from './parts-of-sentences.ts';

/** Words of a seal that is left until the pour no longer bonds to it. */
export const sealPastBond: FindingWords = {
  title: 'The seal is left too long for the pour to bond',
  headline: (_finding, _reader, { measured, limit }) =>
    `The seal has ${measured} before the pour; after ${limit} at this temperature it has to be washed and abraded first.`,
  why: ({ severity }) =>
    severity === 'note'
      ? 'A greasy blush and a hard, smooth film keep the colour from bonding; in pockets as wide as these both can be taken off by hand.'
      : 'A greasy blush and a hard, smooth film keep the colour from bonding, and nobody abrades the walls and the floor of so narrow a pocket.',
  fixes: {
    'pour-sooner': ({ hours }) => `Pour ${hoursText(hours)} after the last coat at the latest.`,
    abrade: ({ widthMm }, { units }) =>
      `Wash the film with water, dry it and abrade it with 120 to 220 grit: these pockets are at least ${formatLength(widthMm, units)} wide.`,
  },
};
