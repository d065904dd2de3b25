import type { Finding } from '@pourproof/proof';
import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';

/** Words of how a streak of the colour looks in the wood. */
export const colourHidesOrShows: FindingWords = {
  title: 'How a streak of this colour looks here',
  headline: (finding, _reader, { measured }) => {
    return shows(finding)
      ? `A streak of this colour shows here even on figured wood (colour difference ${measured}).`
      : `A streak of this colour hides in this wood (colour difference ${measured}).`;
  },
  why: (finding) =>
    shows(finding)
      ? 'Tinted wood looks quite unlike bare wood here, so keep bleed short or choose a colour closer to the wood.'
      : 'Tinted wood looks much like bare wood here, so bleed matters less than its length suggests.',
  fixes: {
    'test-coupon': ({ slots }) =>
      `Try the colour in ${counted(slots, 'slot')} across the grain of the same board; the colours used here are averages.`,
  },
};

function shows({ measured, limit }: Finding): boolean {
  return measured.value >= limit.value;
}
