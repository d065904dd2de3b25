import type { FindingWords } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** Words of a board out of flat. */
export const boardNotFlat: FindingWords = {
  title: 'The board is not flat enough',
  headline: (_finding, _reader, { measured, limit }) =>
    `Under the cut the face rises and falls by ${measured}; levelling is planned to take off ${limit}.`,
  why: () =>
    'The bit keeps to one height and the face does not: pockets come out shallow where the board is low, and levelling that stops as planned leaves resin on the low spots.',
  fixes: {
    flatten: ({ byMm }, { units }) =>
      `Surface the board before carving, or take at least ${noLess(byMm, units)} more off its highest place in levelling.`,
  },
};
