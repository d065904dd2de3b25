import { oilCleaning } from '@pourproof/materials';
import { OIL_CLEANING_WORDS } from '../advice/oil-cleaning-words.ts';
import type { FindingWords } from './finding-words.ts';

/** Words of oil or wax in the wood. */
export const oilInWood: FindingWords = {
  title: 'Oil or wax in the wood',
  headline: ({ severity }) =>
    severity === 'stop'
      ? 'This board was oiled or waxed: neither seal nor resin will hold until it is clean.'
      : 'This wood is naturally oily: wipe it just before the seal.',
  why: () =>
    'Oil keeps resin from wetting the wood and softens its cure; sanding alone leaves oil in the pores, and heat drives it out again. Nothing else on this sheet counts until that is done.',
  fixes: {
    clean: ({ step }) => {
      const id = oilCleaning.value[step - 1];
      return id === undefined ? '' : OIL_CLEANING_WORDS[id];
    },
  },
  counted: ['oily wood', 'oily woods'],
};
