import type { FindingWords } from './finding-words.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of a floor too thin under the pocket. */
export const floorTooThin: FindingWords = {
  title: 'Too little wood under the pocket',
  headline: (_finding, _reader, { measured, limit }) =>
    `${measured} of wood stays under the pocket; common practice leaves ${limit}.`,
  why: ({ severity }) =>
    severity === 'stop'
      ? 'So thin a floor gives under the bit: a board that is a little cupped, or a bit set a little deep, is cut through, and resin runs out through its pores.'
      : 'A thin floor gives under the bit and the board cups towards the pocket once the resin shrinks.',
  fixes: {
    'cut-shallower': ({ toMm }, { units }) => `Cut no deeper than ${noMore(toMm, units)}.`,
    'thicker-board': ({ thicknessMm }, { units }) =>
      `Use a board at least ${noLess(thicknessMm, units)} thick.`,
  },
};
