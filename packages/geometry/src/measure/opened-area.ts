import { signedArea } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { findMouths, sweepAt } from '../outline/mouths.ts';
import { openArcs } from '../outline/open-arcs.ts';
import { AxisEdge } from './axis-edge.ts';
import { checkRadius } from './check-radius.ts';
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
  const { nodeR, neckCount } = axis;
  for (let k = 0; k < neckCount; k++) {
    if (nodeR[k] < radiusMm) {
      const mouths = findMouths(axis, radiusMm);
      return openArea(axis, radiusMm) + sectorArea(mouths, openArcs(mouths));
    }
  }
  return isWider(axis, radiusMm) ? signedArea(axis.region) - cornerLoss(axis, radiusMm) : 0;
}

/** Whether the cutter fits anywhere. */
function isWider(axis: MedialAxis, r: number): boolean {
  return axis.nodeR.some((clearance) => clearance >= r);
}

/** Area of the cells beside the axis where the clearance is at least r. */
function openArea(axis: MedialAxis, r: number): number {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    const high = nodeR[edgeTo[e]];
    if (high >= r) {
      edge.load(e);
      sum += edge.area(Math.max(edge.r0, r), high, 0);
    }
  }
  return sum;
}

/**
 * What the cutter leaves where it passes all necks: then each narrow part is a corner with one mouth, and no discs overlap there. Only the
 * edges below the radius are looked at, which makes further radii cheap.
 */
function cornerLoss(axis: MedialAxis, r: number): number {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeR, boundary } = axis;
  const { count, tx, ty } = boundary;
  const edge = new AxisEdge(axis);
  let loss = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    const low = nodeR[edgeFrom[e]];
    const a = edgeLeft[e];
    const b = edgeRight[e];
    if (low >= r) {
      continue;
    }
    if (low === 0 && a < count && b < count && nodeR[edgeTo[e]] >= r) {
      // both tangents less the sector between them
      const half = (tx[a] * ty[b] - ty[a] * tx[b]) / (1 + tx[a] * tx[b] + ty[a] * ty[b]);
      loss += r * r * (half - Math.atan(half));
    } else if (!edge.isSpoke(e)) {
      edge.load(e);
      loss += edge.area(edge.r0, Math.min(edge.r1, r), 0);
      if (edge.r1 >= r) {
        edge.at(r);
        loss -= (r * r * sweepAt(boundary, edge)) / 2;
      }
    }
  }
  return loss;
}
