import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { checkRadius } from './check-radius.ts';

/**
 * Area in mm² of the points whose distance to the artwork's edge is more than `radiusMm`: where the centre of a flat cutter may go.
 * Exact for the polygon up to rounding; 0 for an empty region or a radius that fits nowhere.
 *
 * @param radiusMm 0 or more; 0 gives the artwork's area
 * @throws {RangeError} when the radius is negative or not finite
 */
export function erodedArea(axis: MedialAxis, radiusMm: number): number {
  checkRadius(radiusMm);
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    const high = nodeR[edgeTo[e]];
    if (high > radiusMm) {
      edge.load(e);
      sum += edge.area(Math.max(edge.r0, radiusMm), high, radiusMm);
    }
  }
  return sum;
}
