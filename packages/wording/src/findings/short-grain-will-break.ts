import { bitSize } from '@pourproof/job';
import type { FindingWords } from './finding-words.ts';
import { spaceApart, subject } from './parts-of-sentences.ts';
import { noLess, noMore } from './way-length.ts';

/** Words of thin wood between cuts. */
export const shortGrainWillBreak: FindingWords = {
  title: 'Thin wood between cuts may break',
  headline: (finding, _reader, { measured, limit }) =>
    `${subject(finding, 'piece of wood between cuts', 'pieces of wood between cuts')} as thin as ${measured}${finding.acrossGrain === true ? ', with the fibres running across' : ''}; common practice asks for ${limit} there.`,
  why: ({ acrossGrain }) =>
    acrossGrain === true
      ? 'Short grain: the fibres run across the thin wall, so that only the bond between them holds it, and it snaps under the bit or in levelling.'
      : 'Even along the grain, a wall this thin for its height bends away from the bit and tears.',
  fixes: {
    'use-bit': ({ diameterMm }, { units }) =>
      `Add a ${bitSize(diameterMm, units)} flat bit: it cuts away the wood that is left within a stroke.`,
    ...spaceApart,
    widen: ({ byMm }, { units }) => `Leave ${noLess(byMm, units)} more wood there.`,
    'cut-shallower': ({ toMm }, { units }) => `Cut no deeper than ${noMore(toMm, units)} there.`,
  },
  advice: () => [
    'Cut towards the thicker wood in light passes with a sharp down-cut bit, and fill one side before cutting the other.',
  ],
  measuredHow: ({ acrossGrain }) => (acrossGrain === true ? 'across the grain' : 'along the grain'),
};
