import { formatLength } from '@pourproof/plane';
import type { FindingWords } from './finding-words.ts';

/** Words of outlines that are not closed. */
export const outlineOpen: FindingWords = {
  title: 'An outline is open',
  headline: ({ where, measured }, { units }) =>
    `${where.length <= 1 ? 'One outline is' : `${where.length} outlines are`} open by up to ${formatLength(measured.value, units)}.`,
  why: () =>
    'A pocket needs a closed outline. Where it is open, what will be cut is a guess: either the ends are joined by a straight line or the outline is left out, as the notice says.',
  fixes: {
    'close-gap': ({ gapMm }, { units }) =>
      `Join the ends in the drawing (the widest gap is ${formatLength(gapMm, units)}) and vet it again.`,
  },
};
