import type { StageName } from 'pourproof';

/** Parts of a proof that a maker is told of, in their order. */
export type WorkPart = 'artwork' | 'cut' | 'wood' | 'levelling' | 'paths' | 'ways';

/** What is said while a part is worked on. */
export const WORK_WORDS: Readonly<Record<WorkPart, string>> = {
  artwork: 'measuring the artwork',
  cut: 'cutting it with the bits',
  wood: 'following colour along the fibres',
  levelling: 'sanding the face down',
  paths: 'timing the paths of the bits',
  ways: 'trying ways out of the findings',
};

const PARTS: Readonly<Record<StageName, WorkPart>> = {
  rounds: 'artwork',
  resolve: 'artwork',
  axis: 'artwork',
  widths: 'artwork',
  fit: 'cut',
  cut: 'cut',
  outline: 'cut',
  standing: 'cut',
  colours: 'cut',
  board: 'wood',
  surfaces: 'wood',
  elements: 'wood',
  walls: 'wood',
  travel: 'wood',
  blocks: 'wood',
  heights: 'levelling',
  margins: 'levelling',
  levelling: 'levelling',
  'wood-axis': 'wood',
  slivers: 'wood',
  fills: 'levelling',
  'wood-gaps': 'wood',
  touches: 'wood',
  entering: 'cut',
  ends: 'cut',
  paths: 'paths',
  bounds: 'paths',
  contours: 'paths',
};

/** The part of a proof that a stage belongs to. */
export function partOfStage(stage: StageName): WorkPart {
  return PARTS[stage];
}
