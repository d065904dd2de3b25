import type { FindingWords } from './finding-words.ts';
import { basisText, couponBefore, sealBetter, spaceApart } from './parts-of-sentences.ts';
import { noLess } from './way-length.ts';

/** Words of wood that colour may cross from one stroke to the next. */
export const bleedReachesNeighbour: FindingWords = {
  title: 'Colour may run into the next stroke',
  headline: (finding, _reader, { measured, limit }) =>
    `Only ${measured} of wood along the fibres separates two strokes, and colour may travel ${limit} (${basisText(finding)}).`,
  why: () =>
    'Where streaks from one stroke reach the next, the wood between them is stained right through and the two read as one.',
  fixes: {
    ...couponBefore,
    ...sealBetter,
    ...spaceApart,
    widen: ({ byMm }, { units }) => `Leave ${noLess(byMm, units)} more wood between them.`,
  },
};
