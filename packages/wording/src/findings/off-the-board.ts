import type { FindingWords } from './finding-words.ts';
import { movedText } from './moved-text.ts';

/** Words of a cut that is not on the clear face. */
export const offTheBoard: FindingWords = {
  title: 'The cut runs off the clear face',
  headline: (_finding, _reader, { measured }) =>
    `${measured} of the cut lies off the board, in its margin, in a hole or in a groove.`,
  why: () =>
    'There the bit meets air, a clamp or hardware, and a pocket that is open at an edge does not hold resin.',
  fixes: {
    move: movedText,
  },
  advice: ({ fix }) =>
    fix.options.length > 0
      ? []
      : ['Make the artwork smaller or the board larger: no move alone brings it onto the clear face.'],
};
