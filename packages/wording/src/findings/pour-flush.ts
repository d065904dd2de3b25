import type { FindingWords } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** Words of a pour that cures below the face. */
export const pourFlush: FindingWords = {
  title: 'The colour cures below the face',
  headline: (_finding, _reader, { measured, limit }) =>
    `The resin sinks by ${limit} as it cures; overpour and levelling together make up for ${measured}.`,
  why: () =>
    'A pour that stands no prouder than it shrinks ends in a dip that catches light and dirt, unless the face is levelled down to it.',
  fixes: {
    'pour-proud': ({ overpourMm }, { units }) =>
      `Pour ${noLess(overpourMm, units)} proud of the face and level it off.`,
  },
};
