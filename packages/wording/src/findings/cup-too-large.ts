import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';

/** Words of more resin than one cup may hold. */
export const cupTooLarge: FindingWords = {
  title: 'Too much resin for one cup',
  headline: (_finding, _reader, { measured, limit }) =>
    `A layer takes ${measured} of mixed resin; no more than ${limit} may stand in one cup in this shop.`,
  why: () =>
    'Mixed resin heats itself, and a full cup cannot shed the heat: it smokes, foams and sets in minutes, and it can burn whoever holds it. The label’s own limit comes first.',
  fixes: {
    'more-cups': ({ cups }) =>
      `Mix ${counted(cups, 'cup')} a layer, one after the other, and pour each out at once; the amounts here are already split that way.`,
    'use-resin': ({ resin }, { materials }) =>
      `Use ${materials.resins[resin]?.name ?? resin}: it is slower, so one cup may hold all of it, but it runs further into end grain.`,
  },
};
