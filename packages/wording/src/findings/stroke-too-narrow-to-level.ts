import type { FindingWords } from './finding-words.ts';
import { scaleArtwork, widenStroke } from './parts-of-sentences.ts';
import { partsText } from './place-text.ts';

/** Words of strokes too narrow for seal and levelling. */
export const strokeTooNarrowToLevel: FindingWords = {
  title: 'Stroke too narrow to level safely',
  headline: ({ where }, _reader, { measured, limit }) =>
    `${partsText(where)} ${where.length === 1 ? 'is' : 'are'} only ${measured} wide at the narrowest; below ${limit} colour rarely survives sealing and levelling.`,
  why: () =>
    'The seal takes its film from both walls, and levelling takes depth, and in a V width too; a narrow slot keeps too little colour to read, and its edges chip first.',
  fixes: { scale: scaleArtwork, widen: widenStroke },
};
