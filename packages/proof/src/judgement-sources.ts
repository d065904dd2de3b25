import type { Source } from '@pourproof/materials';

/** Id of a source of findings, beside those of the materials' tables. */
export type JudgementSourceId =
  | 'opening-by-disc'
  | 'local-thickness'
  | 'svg2-fill'
  | 'board-as-described'
  | 'vee-depth';

/** Sources of the geometry behind findings. */
export const judgementSources: Readonly<Record<JudgementSourceId, Source>> = {
  'opening-by-disc': {
    title: 'J. Serra, Image Analysis and Mathematical Morphology',
    year: 1982,
    status: 'memory',
    note: 'The opening by a disc is what a round cutter reaches; tests compare ours with two other engines.',
  },
  'local-thickness': {
    title: 'T. Hildebrand and P. Rüegsegger, A new method for the model-independent assessment of thickness',
    year: 1997,
    status: 'memory',
    note: 'Width at a point: diameter of the largest disc inside that holds it.',
  },
  'board-as-described': {
    title: 'The board as the job describes it: blocks, margin, holes, grooves and readings',
    status: 'entered',
    note: 'Compared with the cut by exact geometry; the description is the maker’s own.',
  },
  'vee-depth': {
    title: 'Geometry of a V: it is half as wide as it is deep times tan(A/2), on either side',
    status: 'computed',
    note: 'A closed form; tests hold it for 30, 60 and 90°.',
  },
  'svg2-fill': {
    title:
      'W3C, Scalable Vector Graphics 2, fill properties: fill-rule; open subpaths are closed to fill them',
    place: '§13.4.2',
    status: 'memory',
  },
};
