import type { FindingWords } from './finding-words.ts';
import { subject } from './parts-of-sentences.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of an island of wood too small to stand. */
export const islandTooSmall: FindingWords = {
  title: 'An island of wood may come loose',
  headline: (finding, _reader, { measured, limit }) =>
    `${subject(finding, 'island of wood', 'islands of wood')} only ${measured} across at the smallest; common practice asks for ${limit} at this depth.`,
  why: () =>
    'A small post of wood stands on its foot alone: the bit, a clamp or the sander knocks it off, and its end grain drinks colour from all sides.',
  fixes: {
    widen: ({ byMm }, { units }) => `Leave ${noLess(byMm, units)} more wood there.`,
    'cut-shallower': ({ toMm }, { units }) => `Cut no deeper than ${noMore(toMm, units)} there.`,
  },
};
