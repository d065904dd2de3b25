import type { FindingWords } from './finding-words.ts';
import { movedText } from './moved-text.ts';
import { partsText } from './place-text.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of a hole or groove in the back of the board below the pocket. */
export const holeUnderPocket: FindingWords = {
  title: 'Too little wood above a hole in the back',
  headline: ({ where, measured: { value } }, _reader, { measured, limit }) =>
    value === 0
      ? `${partsText(where)} in the back ${where.length === 1 ? 'is' : 'are'} cut into from the face.`
      : `${measured} of wood stays between the pocket and ${where.length === 1 ? `the ${where[0]?.what ?? 'hole'}` : `the nearest of ${partsText(where)}`} in the back; common practice leaves ${limit}.`,
  why: ({ severity }) =>
    severity === 'stop'
      ? 'So little wood breaks through under the bit, and resin runs out through the hole.'
      : 'A thin skin above a hole gives under the bit and cracks when the resin shrinks.',
  fixes: {
    'cut-shallower': ({ toMm }, { units }) => `Cut no deeper than ${noMore(toMm, units)}.`,
    move: movedText,
    'thicker-board': ({ thicknessMm }, { units }) =>
      `Use a board at least ${noLess(thicknessMm, units)} thick, with the hole no deeper.`,
  },
};
