import type { FindingWords } from './finding-words.ts';
import { counted, widenStroke } from './parts-of-sentences.ts';
import { partsText } from './place-text.ts';

/** Words of strokes and dots that the seal fills. */
export const ghostStroke: FindingWords = {
  title: 'The seal fills this stroke',
  headline: ({ where }, _reader, { measured }) =>
    `${partsText(where)} ${where.length === 1 ? 'is' : 'are'} up to ${measured} full of clear seal before any colour goes in.`,
  why: () =>
    'Seal clings to all walls and drains to the bottom; in a narrow slot, a small dot or a V that film takes up most of the room, and the stroke comes out pale or clear: a ghost.',
  fixes: {
    'fewer-coats': ({ coats }) =>
      `Apply ${counted(coats, 'coat')} instead, and blow or wick the excess out of the slots.`,
    widen: widenStroke,
  },
  measuredHow: () => 'clear',
};
