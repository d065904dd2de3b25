import type { FindingWords } from './finding-words.ts';
import { basisText, couponBefore, sealBetter } from './parts-of-sentences.ts';

/** Words of short streaks that are likely to be seen. */
export const visibleBleedLikely: FindingWords = {
  title: 'A short streak is likely to show',
  headline: (finding, _reader, { measured }) =>
    `A short streak at end-grain walls is ${measured} likely to be seen (${basisText(finding)}).`,
  why: () =>
    'Under this seal colour runs less than a millimetre, which many accept; on pale wood and at arm’s length it can still be seen.',
  fixes: {
    ...couponBefore,
    ...sealBetter,
  },
};
