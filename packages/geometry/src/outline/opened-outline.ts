import { checkRadius } from '../measure/check-radius.ts';
import { enteringRadius } from '../measure/entering-radius.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { ArcRings } from './arc-rings.ts';
import { findLevelCrossings } from './level-crossings.ts';
import { openArcs } from './open-arcs.ts';
import { traceLoops } from './trace-loops.ts';

/**
 * Outline of what a flat cutter of radius `radiusMm` removes: straight pieces of the artwork's outline, with their coordinates, joined by true
 * arcs of that radius. Outer rings have positive area, holes negative. No rings where nothing is cut.
 *
 * @param radiusMm 0 or more; 0 gives the artwork's own outline
 * @throws {RangeError} when the radius is negative or not finite
 */
export function openedOutline(axis: MedialAxis, radiusMm: number): ArcRings {
  checkRadius(radiusMm);
  const crossings = findLevelCrossings(axis, enteringRadius(axis, radiusMm));
  return traceLoops(axis, crossings, openArcs(crossings), 'taken').rings;
}
