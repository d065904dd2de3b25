import type { AxisEdge } from './axis-edge.ts';
import { excessBeyondCorner } from './beyond-corners.ts';
import { firstWay } from './slowing-way.ts';

/**
 * Relative tolerance, on the edge and on the clearance, of where a stroke begins within an edge, and the
 * steps at most to find it.
 */
const SHARE_REL_TOL = 1e-12;
const SHARE_STEPS = 60;

/**
 * Share of the loaded edge at which a path from the boundary leaves the corner, so that the stroke does not
 * depend on where a flattened arc has its points.
 */
export function cornerShare(edge: AxisEdge, wayBefore: number): number {
  const excessAt = (share: number): number => {
    edge.atShare(share);
    return excessBeyondCorner(wayBefore + edge.lengthBetween(0, share), edge.clearance);
  };
  // regula falsi with the Illinois modification (Dowell and Jarratt 1971)
  let low = 0;
  let high = 1;
  let atLow = excessAt(low);
  let atHigh = excessAt(high);
  let side = 0;
  for (let k = 0; k < SHARE_STEPS && high - low > SHARE_REL_TOL && atHigh > atLow; k++) {
    const share = low + (high - low) * Math.min(1, Math.max(0, atLow / (atLow - atHigh)));
    const excess = excessAt(share);
    const isDone = Math.abs(excess) <= SHARE_REL_TOL * edge.clearance;
    if (excess > 0 || isDone) {
      high = share;
      atHigh = excess;
      atLow /= side > 0 ? 2 : 1;
      side = 1;
    } else {
      low = share;
      atLow = excess;
      atHigh /= side < 0 ? 2 : 1;
      side = -1;
    }
    if (isDone) {
      break;
    }
  }
  return high;
}

/** Share of the loaded edge at which a path that is beyond its corner at the low end, but not at the high one, is so no longer. */
export function passingShare(edge: AxisEdge, wayBefore: number): number {
  return firstWay(0, 1, (share) => {
    edge.atShare(share);
    return excessBeyondCorner(wayBefore + edge.lengthBetween(0, share), edge.clearance);
  });
}
