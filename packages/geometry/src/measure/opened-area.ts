import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { isCornerBranch, stoppedDiscs, sumOfSweeps } from '../outline/mouths.ts';
import { hasNarrowNeck } from '../outline/narrow-parts.ts';
import { openArcs } from '../outline/open-arcs.ts';
import { crossingEdges } from './axis-blocks.ts';
import { AREA } from './cell-sums.ts';
import { checkRadius } from './check-radius.ts';
import { enteringRadius } from './entering-radius.ts';
import { cellsAbove } from './part-cells.ts';
import { sectorArea } from './sector-area.ts';

/**
 * Area in mm² that a flat cutter of radius `radiusMm` removes from the artwork: all points that a disc of that radius inside it covers.
 * Exact for the polygon, with true arcs, up to rounding. 0 for an empty region or a cutter that fits nowhere.
 *
 * @param radiusMm 0 or more; 0 gives the artwork's area
 * @throws {RangeError} when the radius is negative or not finite
 */
export function openedArea(axis: MedialAxis, radiusMm: number): number {
  checkRadius(radiusMm);
  const radius = enteringRadius(axis, radiusMm);
  const crossing = crossingEdges(axis, radius);
  return cellsAbove(axis, radius, crossing)[AREA] + sectorsAt(axis, radius, crossing);
}

/** Area that the cutter covers beyond its centres' cells: sectors of discs at the edges that cross its radius. */
function sectorsAt(axis: MedialAxis, radius: number, crossing: readonly number[]): number {
  if (!hasNarrowNeck(axis, radius)) {
    // each narrow part has one mouth, and no discs overlap there
    return (radius * radius * sumOfSweeps(axis, radius, crossing)) / 2;
  }
  const corners = crossing.filter((e) => isCornerBranch(axis, e));
  const discs = stoppedDiscs(
    axis,
    radius,
    crossing.filter((e) => !isCornerBranch(axis, e)),
  );
  return (radius * radius * sumOfSweeps(axis, radius, corners)) / 2 + sectorArea(discs, openArcs(discs));
}
