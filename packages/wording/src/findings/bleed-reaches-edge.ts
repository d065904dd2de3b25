import type { FindingWords } from './finding-words.ts';
import { basisText, couponBefore, sealBetter } from './parts-of-sentences.ts';

/** Words of colour that may run out of the board's edge. */
export const bleedReachesEdge: FindingWords = {
  title: 'Colour may run out of the board’s edge',
  headline: (finding, _reader, { measured, limit }) =>
    `Only ${measured} of wood along the fibres lies between a pocket and the edge, and colour may travel ${limit} (${basisText(finding)}).`,
  why: () =>
    'Streaks then show on the side of the board too, where no levelling reaches, and liquid resin can weep out of the end grain.',
  fixes: {
    ...couponBefore,
    ...sealBetter,
  },
  advice: () => ['Seal the end grain of that edge from outside as well, or leave more wood there.'],
};
