import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';
import { noLess } from './way-length.ts';

/** Words of colours without wood between them. */
export const coloursTouch: FindingWords = {
  title: 'Two colours meet without wood between',
  headline: ({ where }, _reader, { limit }) =>
    `Pockets of different colours meet at ${counted(where.length, 'place')}; a wall that stands there is at least ${limit} wide.`,
  why: () =>
    'They are one pocket: liquid colours run into each other, whichever is poured first. The grams of each colour do not hold either.',
  fixes: {
    'part-by-wall': ({ widthMm }, { units }) =>
      `Leave a wall of wood at least ${noLess(widthMm, units)} wide between the colours.`,
    'pour-in-rounds': ({ rounds }) =>
      `Work in ${rounds.length} rounds, each carved, poured, cured and levelled before the next is carved: ${rounds.map((colours) => colours.join(' and ')).join(', then ')}.`,
  },
};
