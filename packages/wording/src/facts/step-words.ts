import type { StepId } from '@pourproof/proof';

/** What to do at each step, and what to mind: a title and one sentence. */
export const STEP_WORDS: Readonly<Record<StepId, { readonly title: string; readonly remark: string }>> = {
  carve: { title: 'Carve', remark: 'Extract dust at the cutter.' },
  clean: {
    title: 'Clean the pockets',
    remark: 'Brush and vacuum every corner, cut off fuzz, mask what stays bare.',
  },
  'seal-coat': {
    title: 'Seal',
    remark: 'Walls, floor and the face round the cut, end grain first, while the wood cools.',
  },
  'bond-window': {
    title: 'Next layer bonds without sanding',
    remark: 'After this window wash the blush off, dry and abrade before the next layer.',
  },
  pour: { title: 'Pour', remark: 'Mix by weight, stir slowly, keep to the depth on the label.' },
  'next-lift': {
    title: 'Pour the next lift',
    remark: 'While the last one is tacky and no longer warm; later, wash and abrade first.',
  },
  'top-up': {
    title: 'Look at the level, top up',
    remark:
      'Fill up what bubbles and shrinkage have taken; where it is no longer tacky, wash and abrade first.',
  },
  level: {
    title: 'Level at the earliest',
    remark: 'A fingernail must leave no mark; dust of half-cured resin sensitises.',
  },
  finish: { title: 'Finish', remark: 'Sand through the grits, dust off, apply the finish.' },
  'full-cure': { title: 'Fully cured', remark: 'Use, heat and cleaning agents only from here on.' },
};

/** The title of a step with its number where it is done several times. */
export function stepTitle(step: StepId, turn: number): string {
  const { title } = STEP_WORDS[step];
  return turn > 0 ? `${title} (${turn})` : title;
}
