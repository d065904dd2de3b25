import type { FindingWords } from './finding-words.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of a V that is too short for its depth. */
export const veeEndsEarly: FindingWords = {
  title: 'The V ends before the depth is reached',
  headline: (_finding, _reader, { measured, limit }) =>
    `The V can cut ${measured} deep and no more; the widest stroke calls for ${limit}.`,
  why: () =>
    'Beyond its cutting edge a bit rubs and burns instead of cutting. This proof takes it no deeper.',
  fixes: {
    'use-vee': ({ diameterMm }, { units }) =>
      `Use a V of the same angle, ${noLess(diameterMm, units)} across or more.`,
    'cut-shallower': ({ toMm }, { units }) =>
      `Ask for a depth of ${noMore(toMm, units)}: this V reaches that far, and a flat bit can clear its floor.`,
  },
};
