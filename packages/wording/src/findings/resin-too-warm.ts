import type { FindingWords } from './finding-words.ts';

/** Words of a shop warmer than the resin stands. */
export const resinTooWarm: FindingWords = {
  title: 'Too warm for this resin',
  headline: (_finding, _reader, { measured, limit }) =>
    `The shop is at ${measured}; this resin is not poured above ${limit}.`,
  why: () =>
    'Warm resin sets fast and heats itself further: it can foam, yellow or crack, and while it is thin it runs further into end grain.',
  fixes: {
    'change-temperature': ({ toC }) => `Let shop, board and resin cool to ${toC} °C.`,
  },
};
