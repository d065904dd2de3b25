import type { Boundary } from './boundary.ts';
import { ALL_BUT_STRAIGHT_RAD, NORMAL_CONE_TOL_RAD } from './tolerances.ts';

/**
 * Whether a disc that stands on edge e, `foot` mm along it, with a diameter of `height` mm, can be a bottleneck there: its contact lies
 * on the edge and not in a corner at one of its ends.
 *
 * @param roundingMm rounding error of a distance between points of the boundary, mm
 */
export function hasFoot(
  boundary: Boundary,
  e: number,
  foot: number,
  height: number,
  roundingMm: number,
): boolean {
  const { isReflex, length, next, previous } = boundary;
  const margin = NORMAL_CONE_TOL_RAD * height;
  const low = isReflex[e] !== 0 ? margin : -margin;
  const after = next[e];
  const high = isReflex[after] !== 0 ? length[e] - margin : length[e] + margin;
  return (
    foot > low &&
    foot < high &&
    (isReflex[e] !== 0 || !entersNeighbour(boundary, e, previous[e], foot, height / 2, roundingMm)) &&
    (isReflex[after] !== 0 || !entersNeighbour(boundary, e, after, length[e] - foot, height / 2, roundingMm))
  );
}

/**
 * Whether a disc that touches edge e at a distance from a corner reaches, by more than rounding, over the neighbour beyond the corner.
 * Only in a corner that is all but straight would such a disc pass for empty, and cells be off by up to 1e-7.
 */
function entersNeighbour(
  { length, tx, ty }: Boundary,
  e: number,
  neighbour: number,
  away: number,
  radius: number,
  roundingMm: number,
): boolean {
  const cos = tx[e] * tx[neighbour] + ty[e] * ty[neighbour];
  const sin = Math.abs(tx[e] * ty[neighbour] - ty[e] * tx[neighbour]);
  if (sin > ALL_BUT_STRAIGHT_RAD || cos < 0 || away > radius * sin) {
    return false;
  }
  // the point of the neighbour nearest to the centre, from the corner
  const q = Math.min(Math.max(radius * sin - away * cos, 0), length[neighbour]);
  const beyond = away * away + 2 * away * q * cos + q * q - 2 * radius * q * sin;
  return beyond < -2 * (Math.abs(away) + q + radius * sin) * roundingMm;
}
