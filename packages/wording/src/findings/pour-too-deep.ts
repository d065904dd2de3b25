import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';

/** Words of a pocket too deep for one pour. */
export const pourTooDeep: FindingWords = {
  title: 'Too deep for one pour of this resin',
  headline: (_finding, _reader, { measured, limit }) =>
    `${measured} with the overpour is deeper than this resin should be poured at once: ${limit}.`,
  why: () =>
    'The heat of cure leaves a deep pour slowly (the time grows with the square of the depth), so it can smoke, foam, yellow or crack. The depth on the label comes first.',
  fixes: {
    'pour-in-layers': ({ layers }) =>
      `Pour ${counted(layers, 'equal layer')}, each while the last is tacky and no longer warm.`,
    'use-resin': ({ resin }, { materials }) =>
      `Use ${materials.resins[resin]?.name ?? resin}: one pour is enough, but it stays thin for longer and runs further into end grain.`,
  },
};
