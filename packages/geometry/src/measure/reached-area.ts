import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { stoppedDiscs } from '../outline/level-crossings.ts';
import { openArcs } from '../outline/open-arcs.ts';
import { crossingEdges } from './axis-blocks.ts';
import { areaBeyondStrip } from './cell-sums.ts';
import { checkRadius } from './check-radius.ts';
import { enteringRadius } from './entering-radius.ts';
import { cellsAbove } from './part-cells.ts';
import { sectorArea } from './sector-area.ts';

/**
 * Area in mm² within `reachMm` of the points where a disc of radius `centreMm` fits: what a cutter with
 * radius `centreMm` at the face removes at the height where its radius is `reachMm`. With `reachMm` equal to
 * `centreMm` this is the opened area, with 0 the eroded area. Exact up to rounding.
 *
 * @param reachMm 0 … centreMm
 * @throws {RangeError} when a radius is out of its range
 */
export function reachedArea(axis: MedialAxis, centreMm: number, reachMm: number): number {
  checkRadius(centreMm);
  checkRadius(reachMm);
  if (reachMm > centreMm) {
    throw new RangeError(`reachMm is ${reachMm}; give at most centreMm, ${centreMm}`);
  }
  const centre = enteringRadius(axis, centreMm);
  const reach = Math.min(reachMm, centre);
  const crossing = crossingEdges(axis, centre);
  // the level crossings of the whole cutter, with smaller discs
  const discs = { ...stoppedDiscs(axis, centre, crossing), radius: reach };
  return (
    areaBeyondStrip(cellsAbove(axis, centre, crossing), centre - reach) + sectorArea(discs, openArcs(discs))
  );
}
