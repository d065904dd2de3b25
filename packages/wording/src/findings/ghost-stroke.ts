import type { FindingWords } from './finding-words.ts';
import { counted, subject, widenStroke } from './parts-of-sentences.ts';

/** Words of strokes that the seal fills. */
export const ghostStroke: FindingWords = {
  title: 'The seal fills this stroke',
  headline: (finding, _reader, { measured }) =>
    `${subject(finding, 'stroke', 'strokes')} up to ${measured} full of clear seal before any colour goes in.`,
  why: () =>
    'Seal clings to both walls and drains to the bottom; in a narrow slot or a V that film takes up most of the room, and the stroke comes out pale or clear: a ghost.',
  fixes: {
    'fewer-coats': ({ coats }) =>
      `Apply ${counted(coats, 'coat')} instead, and blow or wick the excess out of the slots.`,
    widen: widenStroke,
  },
  measuredHow: () => 'clear',
};
