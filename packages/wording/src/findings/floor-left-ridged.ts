import { bitSize } from '@pourproof/job';
import type { FindingWords } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** Words of floor that only the tip of a V reaches. */
export const floorLeftRidged: FindingWords = {
  title: 'Only the tip of the V reaches this floor',
  headline: (_finding, _reader, { measured }) =>
    `${measured} of floor lies at the depth limit, beyond the flanks of the V: only its tip passes over it.`,
  why: () =>
    'A point that runs to and fro over a level floor leaves a ridge between every two passes; the ridges show through thin colour and hold bubbles.',
  fixes: {
    'use-bit': ({ diameterMm, floorSharePct, clears }, { units }) =>
      `Add a ${bitSize(diameterMm, units)} flat bit for the floor: ${clears ? 'what it leaves in the corners the tip goes over in a round or two' : `it clears ${floorSharePct} % of it`}.`,
    deepen: ({ byMm }, { units }) =>
      `Cut ${noLess(byMm, units)} deeper: then the flanks of the V meet everywhere.`,
  },
};
