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
 * Area in mm² within `reachMm` of the points where a disc of radius `centreMm` fits: what a cutter that is `centreMm` in radius at the face removes at
 * the height where its radius is `reachMm`. `reachMm` equal to `centreMm` gives the opened area, 0 the eroded one. Exact up to rounding.
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
  // the same crossings as those of the whole cutter, with smaller discs
  const discs = { ...stoppedDiscs(axis, centre, crossing), radius: reach };
  return (
    areaBeyondStrip(cellsAbove(axis, centre, crossing), centre - reach) + sectorArea(discs, openArcs(discs))
  );
}

/**
 * Volume in mm³ that a turning cutter removes at one depth, its centre going wherever its largest radius below the face fits.
 *
 * `profile` lists height above the tip and radius there, both in mm and not falling, straight between; it starts at height 0 and ends at the depth.
 * A straight piece is integrated by Simpson's rule, which is exact where discs in short bottlenecks don't overlap.
 *
 * @throws {RangeError} when heights or radii fall, or fewer than two points are given
 */
export function profileVolume(
  axis: MedialAxis,
  profile: readonly (readonly [heightMm: number, radiusMm: number])[],
): number {
  const last = profile.at(-1);
  if (profile.length < 2 || last === undefined) {
    throw new RangeError(
      'profile has fewer than two points; give height and radius at the tip and at the face',
    );
  }
  let sum = 0;
  profile.slice(1).forEach(([height, radius], k) => {
    const [below, narrower] = profile[k];
    if (height < below || radius < narrower) {
      throw new RangeError(`profile falls after point ${k}; heights and radii must rise or stay`);
    }
    const at = (reach: number): number => reachedArea(axis, last[1], reach);
    sum += ((height - below) * (at(narrower) + 4 * at((narrower + radius) / 2) + at(radius))) / 6;
  });
  return sum;
}
