import type { Source } from '@pourproof/materials';

/** Id of a source that findings rest on beside those of the materials' tables. */
export type JudgementSourceId = 'opening-by-disc' | 'local-thickness' | 'svg2-fill';

/** Sources of the geometry behind findings. */
export const judgementSources: Readonly<Record<JudgementSourceId, Source>> = {
  'opening-by-disc': {
    title:
      'J. Serra, Image Analysis and Mathematical Morphology: opening by a disc as what a round cutter reaches',
    year: 1982,
    status: 'memory',
    note: 'The definition is repeated in docs/method; tests compare it with two other engines.',
  },
  'local-thickness': {
    title: 'T. Hildebrand and P. Rüegsegger, A new method for the model-independent assessment of thickness',
    year: 1997,
    status: 'memory',
    note: 'Width at a point: diameter of the largest disc inside that holds it.',
  },
  'svg2-fill': {
    title:
      'W3C, Scalable Vector Graphics 2, fill properties: fill-rule; open subpaths are closed to fill them',
    place: '§13.4.2',
    status: 'memory',
  },
};
