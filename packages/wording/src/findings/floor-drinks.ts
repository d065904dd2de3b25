import type { FindingWords } from './finding-words.ts';
import { couponBefore, sealBetter } from './parts-of-sentences.ts';

/** Words of floors in end grain. */
export const floorDrinks: FindingWords = {
  title: 'The floor soaks up resin',
  headline: ({ where }) =>
    `End grain lies open at the bottom of ${where.length === 1 ? 'the cut' : `${where.length} blocks`} and soaks up resin.`,
  why: () =>
    'Upright fibres draw resin down like straws: the level drops after the pour, bubbles rise, and a thin board darkens around the floor.',
  fixes: {
    ...couponBefore,
    ...sealBetter,
    'top-up': ({ volumeMl }) =>
      `Have up to ${volumeMl} ml ready for topping up; half of that is in the mix already.`,
  },
};
