import type { FindingWords } from './finding-words.ts';
import { movedText } from './moved-text.ts';
import { counted } from './parts-of-sentences.ts';
import { noLess } from './way-length.ts';

/** Words of a clamp in the way of the bit. */
export const clampInTheWay: FindingWords = {
  title: 'A clamp stands in the way of the bit',
  headline: ({ severity, where }, _reader, { measured }) =>
    severity === 'stop'
      ? `The bit runs into ${counted(where.length, 'clamp or hold-down', 'clamps or hold-downs')}, up to ${measured} deep.`
      : `Only ${measured} of room stays between the bit and a clamp or hold-down.`,
  why: ({ severity }) =>
    severity === 'stop'
      ? 'The bit breaks, the board comes loose, or both. The full diameter of the bit counts, as it stands beside the clamp.'
      : 'The nut and the collet are wider than the bit: where the bit sticks out less than the clamp is high, they hit it.',
  fixes: {
    move: movedText,
    'move-clamp': ({ byMm }, { units }) =>
      `Put the clamp ${noLess(byMm, units)} farther away, or hold the board another way there.`,
  },
  advice: () => [
    'Let the bit travel between pockets higher than every clamp, and look once round by hand before it cuts.',
  ],
};
