import { applyTransform, type Point, scaling } from '@pourproof/plane';
import type { FixStep } from '../report/fix-schema.ts';
import type { Moved } from './new-places.ts';

/** Places nearer to each other than this are one place beyond what a way out moves by itself, mm (our choice: what a maker points at). */
const SAME_PLACE_MM = 1;

/** How much larger some ways out make the artwork. */
export function factorOf(steps: readonly FixStep[]): number {
  return steps.reduce((factor, step) => (step.do === 'scale' ? factor * step.factor : factor), 1);
}

/** Where a drawing that some ways out have changed has what it had before. */
export function movedBy(steps: readonly FixStep[]): Moved {
  const by = scaling(factorOf(steps));
  return {
    to: (point): Point => applyTransform(by, point),
    slackMm: steps.reduce((sum, step) => sum + widenedMm(step), SAME_PLACE_MM),
  };
}

/** How far a way out moves walls at the most, beyond scaling all of them. */
function widenedMm(step: FixStep): number {
  switch (step.do) {
    case 'widen':
      return step.byMm;
    case 'part-by-wall':
      return step.widthMm;
    default:
      return 0;
  }
}
