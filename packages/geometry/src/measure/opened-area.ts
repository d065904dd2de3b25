import { signedArea } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { findMouths, isCornerBranch, sweepAt } from '../outline/mouths.ts';
import { openArcs } from '../outline/open-arcs.ts';
import { AxisEdge } from './axis-edge.ts';
import { checkRadius } from './check-radius.ts';
import { enteringRadius } from './entering-radius.ts';
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
  const { nodeR, neckCount } = axis;
  const above = countAbove(axis, radius);
  if (above === 0) {
    return 0;
  }
  let hasNarrowNeck = false;
  for (let k = 0; k < neckCount; k++) {
    hasNarrowNeck ||= nodeR[k] < radius;
  }
  const area =
    2 * above < axis.edgeFrom.length
      ? cellsAbove(axis, radius, !hasNarrowNeck)
      : signedArea(axis.region) - cellsBelow(axis, radius, !hasNarrowNeck);
  if (!hasNarrowNeck) {
    return area;
  }
  const mouths = findMouths(axis, radius, false);
  return area + sectorArea(mouths, openArcs(mouths));
}

/** Number of axis edges with a part where the cutter fits. */
function countAbove(axis: MedialAxis, r: number): number {
  const { edgeTo, nodeR } = axis;
  let count = 0;
  for (let e = 0; e < edgeTo.length; e++) {
    count += nodeR[edgeTo[e]] >= r ? 1 : 0;
  }
  return count;
}

/**
 * Area of the cells beside the axis where the clearance is at least r, with the sectors that the cutter covers in corners. `isAlone` says that
 * it passes all necks: then each narrow part has one mouth, no discs overlap there, and their sectors are counted too.
 */
function cellsAbove(axis: MedialAxis, r: number, isAlone: boolean): number {
  const { edgeTo, nodeR, boundary } = axis;
  const edge = new AxisEdge(axis);
  let sum = 0;
  for (let e = 0; e < edgeTo.length; e++) {
    const high = nodeR[edgeTo[e]];
    if (high < r || edge.isSpoke(e)) {
      continue;
    }
    edge.load(e);
    sum += edge.area(Math.max(edge.r0, r), high, 0);
    if (edge.r0 < r && (isAlone || isCornerBranch(axis, e))) {
      edge.at(r);
      sum += (r * r * sweepAt(boundary, edge)) / 2;
    }
  }
  return sum;
}

/** Area of the cells beside the axis where the clearance is less than r, less the same sectors. */
function cellsBelow(axis: MedialAxis, r: number, isAlone: boolean): number {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeR, boundary } = axis;
  const { tx, ty } = boundary;
  const edge = new AxisEdge(axis);
  let loss = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    if (nodeR[edgeFrom[e]] >= r) {
      continue;
    }
    if (nodeR[edgeTo[e]] >= r && isCornerBranch(axis, e)) {
      // both tangents less the sector between them
      const a = edgeLeft[e];
      const b = edgeRight[e];
      const half = (tx[a] * ty[b] - ty[a] * tx[b]) / (1 + tx[a] * tx[b] + ty[a] * ty[b]);
      loss += r * r * (half - Math.atan(half));
    } else if (!edge.isSpoke(e)) {
      edge.load(e);
      loss += edge.area(edge.r0, Math.min(edge.r1, r), 0);
      if (edge.r1 >= r && isAlone) {
        edge.at(r);
        loss -= (r * r * sweepAt(boundary, edge)) / 2;
      }
    }
  }
  return loss;
}
