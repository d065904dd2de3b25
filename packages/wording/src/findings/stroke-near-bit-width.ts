import { bitSize } from '@pourproof/job';
import type { FindingWords } from './finding-words.ts';
import { scaleArtwork, subject, widenStroke } from './parts-of-sentences.ts';

/** Words of strokes that the bit only just enters. */
export const strokeNearBitWidth: FindingWords = {
  title: 'Stroke barely wider than the bit',
  headline: (finding, _reader, { measured, limit }) =>
    `${subject(finding, 'stroke', 'strokes')} barely wider than the bit: ${measured}, where ${limit} is safe.`,
  why: () =>
    'A bit that fills its slot cuts on both sides at once: it packs chips, wanders and heats the walls, and the slot comes out wider than drawn.',
  fixes: {
    'use-bit': ({ diameterMm }, { units }) => `Use a ${bitSize(diameterMm, units)} flat bit there.`,
    scale: scaleArtwork,
    widen: widenStroke,
  },
};
