import type { StepId } from '@pourproof/proof';

/** What to do at each step, and what to mind: a title and one sentence. */
export const STEP_WORDS: Readonly<Record<StepId, { readonly title: string; readonly remark: string }>> = {
  carve: { title: 'Carve', remark: 'Extract dust at the cutter.' },
  clean: {
    title: 'Clean the pockets',
    remark: 'Brush and vacuum every corner, cut off fuzz, mask what is to stay bare.',
  },
  'seal-coat': {
    title: 'Seal',
    remark:
      'Walls, floor and the face around the cut, end grain first, never while the board is warming up: that blows bubbles.',
  },
  'bond-window': {
    title: 'Next layer bonds without sanding',
    remark: 'After this window, wash off the blush, dry and abrade before the next layer.',
  },
  pour: { title: 'Pour', remark: 'Mix by weight, stir slowly, keep to the depth on the label.' },
  'next-layer': {
    title: 'Pour the next layer',
    remark: 'While the last one is tacky and no longer warm; after that, wash and abrade first.',
  },
  'top-up': {
    title: 'Check the level and top up',
    remark: 'Make up for bubbles and shrinkage; where the resin is no longer tacky, wash and abrade first.',
  },
  level: {
    title: 'Level, at the earliest',
    remark: 'A fingernail must leave no mark; dust from half-cured resin is a sensitiser.',
  },
  finish: { title: 'Finish', remark: 'Sand through the grits, dust off, apply the finish.' },
  'full-cure': { title: 'Fully cured', remark: 'Use, heat and cleaning agents only from here on.' },
};

/** The title of a step with its number where it is done several times, and with its round where there are several. */
export function stepTitle(step: StepId, turn: number, round?: number): string {
  const { title } = STEP_WORDS[step];
  return `${round === undefined ? '' : `Round ${round}: `}${title}${turn > 0 ? ` (${turn})` : ''}`;
}
