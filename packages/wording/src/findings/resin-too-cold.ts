import type { FindingWords } from './finding-words.ts';

/** Words of a shop colder than the resin stands. */
export const resinTooCold: FindingWords = {
  title: 'Too cold for this resin',
  headline: ({ measured, limit }) =>
    `The shop is at ${measured.value} °C; this resin is not poured below ${limit.value} °C.`,
  why: () =>
    'In the cold the mix stays thick and the cure can stop half way: soft spots, a greasy film and white clouds. Waiting longer does not always mend it.',
  fixes: {
    'change-temperature': ({ toC, besideSolvent }) =>
      `Bring shop, board and resin to ${toC} °C${besideSolvent ? ', but light no heater before all solvent has left' : ''}.`,
  },
};
