import type { FindingWords } from './finding-words.ts';

/** Words of a shop colder than the resin stands. */
export const resinTooCold: FindingWords = {
  title: 'Too cold for this resin',
  headline: (_finding, _reader, { measured, limit }) =>
    `The shop is at ${measured}; this resin is not poured below ${limit}.`,
  why: () =>
    'In the cold the mix stays thick and the cure can stop half way: soft spots, a greasy film and white clouds. Waiting longer does not always mend it.',
  fixes: {
    'change-temperature': ({ toC, besideSolvent }) =>
      `Bring shop, board and resin to ${toC} °C${besideSolvent ? ', but light no heater before all solvent has left' : ''}.`,
  },
};
