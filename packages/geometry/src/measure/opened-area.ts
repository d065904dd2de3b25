import { signedArea } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { findMouths, type Mouths, sweepAt } from '../outline/mouths.ts';
import { type OpenArcs, openArcs } from '../outline/open-arcs.ts';
import { AxisEdge } from './axis-edge.ts';
import { checkRadius } from './check-radius.ts';

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

/** Area that the mouths' discs cover in the narrow parts that they close. */
function sectorArea(mouths: Mouths, arcs: OpenArcs): number {
  const { radius, sweep } = mouths;
  let sum = 0;
  for (let k = 0; k < sweep.length; k++) {
    sum += arcs.isTrimmed[k] === 0 ? (radius * radius * sweep[k]) / 2 : 0;
  }
  return sum + trimmedArea(mouths, arcs);
}

/** The same where discs overlap: twice the area is the integral of x·dy − y·dx along the radii and the open arcs. */
function trimmedArea(mouths: Mouths, arcs: OpenArcs): number {
  const { radius: r, x, y, angle, sweep, closes } = mouths;
  const originOf = new Map<number, number>();
  let sum = 0;
  for (let k = 0; k < sweep.length; k++) {
    if (arcs.isTrimmed[k] === 0) {
      continue;
    }
    // relative to one mouth of the same narrow part, so that nothing large cancels
    const o = originOf.get(closes[k]) ?? k;
    originOf.set(closes[k], o);
    const cx = x[k] - x[o];
    const cy = y[k] - y[o];
    const end = angle[k] + sweep[k];
    sum += r * (cx * (Math.sin(angle[k]) - Math.sin(end)) - cy * (Math.cos(angle[k]) - Math.cos(end)));
    for (let a = arcs.first[k]; a < arcs.first[k + 1]; a++) {
      const from = angle[k] + arcs.from[a];
      const to = angle[k] + arcs.to[a];
      sum +=
        r * (cx * (Math.sin(to) - Math.sin(from)) - cy * (Math.cos(to) - Math.cos(from)) + r * (to - from));
    }
  }
  return sum / 2;
}
