import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';

/** Words of more pockets than a cup fills in its working time. */
export const pourHurried: FindingWords = {
  title: 'A cup thickens before it is empty',
  headline: ({ measured, limit }) =>
    `Each cup has ${counted(measured.value, 'pocket')} to fill, but stays workable long enough for about ${limit.value}.`,
  why: () =>
    'Resin that has begun to thicken drags bubbles along and does not run into corners. More cups would do, but each would be too small to weigh accurately on this scale.',
  fixes: {
    'use-scale': ({ scale }, { materials }) =>
      `Weigh on a ${materials.scales[scale]?.name ?? scale} and mix more, smaller cups.`,
    'use-resin': ({ resin }, { materials }) =>
      `Use ${materials.resins[resin]?.name ?? resin}: it stays workable for longer, but runs further into end grain.`,
  },
  counted: ['pocket', 'pockets'],
};
