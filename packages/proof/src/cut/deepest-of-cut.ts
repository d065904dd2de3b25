import type { Carving } from '@pourproof/cutting';
import type { CutShape } from './cut-shape.ts';

/**
 * Greatest depth of a cut, mm: the limit if there is floor at it, else what the widest stroke allows; 0 if
 * nothing is cut.
 */
export function deepestOfCut(carving: Carving, shape: CutShape): number {
  if (carving.floorAreaMm2 > 0) {
    return carving.maxDepthMm;
  }
  const widest = carving.axis.nodeR.reduce((most, r) => Math.max(most, r), 0);
  return shape.sectionAt(2 * widest)?.depthMm ?? 0;
}
