import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { isCornerBranch, stoppedDiscs } from '../outline/mouths.ts';
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

/** Area that the cutter covers beyond its centres' cells: sectors of its disc at the edges that cross its radius. */
function sectorsAt(axis: MedialAxis, radius: number, crossing: readonly number[]): number {
  const { edgeLeft, edgeRight, boundary } = axis;
  const { tx, ty } = boundary;
  const others: number[] = [];
  let sweep = 0;
  for (const e of crossing) {
    if (!isCornerBranch(axis, e)) {
      others.push(e);
      continue;
    }
    // no other disc reaches into a corner, and the walls turn by the sweep
    const a = edgeLeft[e];
    const b = edgeRight[e];
    sweep += Math.atan2(Math.abs(tx[a] * ty[b] - ty[a] * tx[b]), tx[a] * tx[b] + ty[a] * ty[b]);
  }
  const inCorners = (radius * radius * sweep) / 2;
  if (others.length === 0) {
    return inCorners;
  }
  const discs = stoppedDiscs(axis, radius, others);
  return inCorners + sectorArea(discs, openArcs(discs));
}
