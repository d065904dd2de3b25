import type { FindingWords } from './finding-words.ts';
import { basisText, couponBefore, sealBetter } from './parts-of-sentences.ts';

/** Words of colour that may run through a joint into a paler wood. */
export const bleedReachesBlock: FindingWords = {
  title: 'Colour may run into the paler wood beside it',
  headline: (finding, _reader, { measured }) =>
    `Colour may run through the joint beside a pocket and ${measured} into the paler wood there (${basisText(finding)}).`,
  why: () =>
    'The fibres of the darker wood end at the joint, and end grain drinks its glue: where the joint is starved, colour goes on. What the dark wood hides shows in the pale one.',
  fixes: {
    ...couponBefore,
    ...sealBetter,
  },
  advice: () => [
    'Keep the pocket farther from the joint, or seal its walls on that side with an extra coat.',
  ],
};
