import { formatLength } from '@pourproof/plane';
import type { FindingWords } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** Words of a pour that cures below the face. */
export const pourFlush: FindingWords = {
  title: 'The colour cures below the face',
  headline: ({ measured, limit }, { units }) =>
    `The resin sinks by ${formatLength(limit.value, units)} as it cures; overpour and levelling together make up for ${formatLength(measured.value, units)}.`,
  why: () =>
    'A pour that stands no prouder than it shrinks ends in a dip that catches light and dirt, unless the face is levelled down to it.',
  fixes: {
    'pour-proud': ({ overpourMm }, { units }) =>
      `Pour ${noLess(overpourMm, units)} proud of the face and level it off.`,
  },
};
