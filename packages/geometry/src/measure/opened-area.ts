import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { findMouths, type Mouths } from '../outline/mouths.ts';
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
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    const high = nodeR[edgeTo[e]];
    if (high >= radiusMm) {
      edge.load(e);
      sum += edge.area(Math.max(edge.r0, radiusMm), high, 0);
    }
  }
  if (radiusMm === 0) {
    return sum;
  }
  const mouths = findMouths(axis, radiusMm);
  return sum + sectorArea(mouths, openArcs(mouths));
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
