import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';

/** What a piece of the axis carries: nothing but a corner, a stroke, or the taper at a stroke's end. */
export const CORNER = 0;
export const STROKE = 1;
export const TAPER = 2;

/** The axis sorted into corners, strokes and tapers. */
export interface StrokeParts {
  /** {@link CORNER}, {@link STROKE} or {@link TAPER} for each axis edge; spokes are corners. */
  readonly part: Uint8Array;
  /** Nodes from which no edge rises: where the clearance is greatest around. */
  readonly tops: readonly number[];
}

/**
 * A branch that runs into the boundary is a corner unless the way along it reaches more than this many times the clearance at its root beyond
 * the disc there: corners of 60° and more reach at most once (1/sin 30° − 1).
 */
const CORNER_REACH = 1;
/** A branch that narrows to its end is a taper up to where doubling the way from the tip widens it by no more than this factor. */
const TAPER_GROWTH = 1.25;
/**
 * A blunt end is a stroke's end if over this many of its half widths, or half the branch if that is less, it widens by no more than
 * {@link BLUNT_GROWTH}: else it is the rounded tip of a taper.
 */
const BLUNT_LENGTH = 12;
const BLUNT_GROWTH = 1.4;
/** A rounded tip is at least this many times narrower than the wide end of its branch; less is a stroke that narrows. */
const TIP_RATIO = 4;

/** Sorts the axis' edges into corners, strokes and tapers; linear time. */
export function strokeParts(axis: MedialAxis): StrokeParts {
  const { edgeFrom, edgeTo, nodeR, neckCount } = axis;
  const edge = new AxisEdge(axis);
  const count = edgeFrom.length;
  const part = new Uint8Array(count);
  const length = new Float64Array(count);
  // longest way down from each node to the boundary; necks lead on, to another part
  const reach = new Float64Array(nodeR.length).fill(0);
  reach.fill(Infinity, 0, neckCount);
  const rising = new Int32Array(nodeR.length).fill(-1);
  const strokesBelow = new Uint8Array(nodeR.length);
  for (let e = 0; e < count; e++) {
    if (edge.isSpoke(e)) {
      continue;
    }
    edge.load(e);
    const to = edgeTo[e];
    length[e] = edge.lengthBetween(0, 1);
    const way = reach[edgeFrom[e]] + length[e];
    reach[to] = Math.max(reach[to], way);
    if (edgeFrom[e] >= neckCount) {
      rising[edgeFrom[e]] = e;
    }
    if (way - nodeR[to] > CORNER_REACH * nodeR[to]) {
      part[e] = STROKE;
      strokesBelow[to] = Math.min(2, strokesBelow[to] + 1);
    }
  }
  const tops: number[] = [];
  for (let k = neckCount; k < nodeR.length; k++) {
    if (nodeR[k] > 0 && rising[k] < 0) {
      tops.push(k);
    }
  }
  for (let e = 0; e < count; e++) {
    if (part[e] === STROKE && edgeFrom[e] >= neckCount && strokesBelow[edgeFrom[e]] === 0) {
      markTaper(axis, e, { part, length, rising, strokesBelow, reach });
    }
  }
  return { part, tops };
}

interface Branches {
  readonly part: Uint8Array;
  readonly length: Float64Array;
  readonly rising: Int32Array;
  readonly strokesBelow: Uint8Array;
  readonly reach: Float64Array;
}

/** Marks the taper at the free end where edge e starts, if the branch tapers. */
function markTaper(axis: MedialAxis, e: number, branches: Branches): void {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { part, length, rising, strokesBelow } = branches;
  const edges: number[] = [];
  // way from the tip, and clearance there, at the nodes of the branch up to where it meets another
  const tip = nodeR[edgeFrom[e]];
  const ways = [tip];
  const radii = [tip];
  for (let at = e; at >= 0 && part[at] !== CORNER; at = rising[edgeTo[at]]) {
    edges.push(at);
    ways.push(ways[ways.length - 1] + length[at]);
    radii.push(nodeR[edgeTo[at]]);
    if (strokesBelow[edgeTo[at]] > 1) {
      break;
    }
  }
  if (tip > 0) {
    const look = Math.min(BLUNT_LENGTH * tip, (ways[ways.length - 1] - tip) / 2);
    const growth = radiusAt(ways, radii, tip + look) - tip;
    if (growth <= (BLUNT_GROWTH - 1) * tip || radii[radii.length - 1] < TIP_RATIO * tip) {
      return;
    }
    // a rounded tip: the way counts from where the flanks would meet
    const before = (tip * look) / growth - tip;
    for (let k = 0; k < ways.length; k++) {
      ways[k] += before;
    }
  }
  for (let k = 0; k < edges.length; k++) {
    const isEnd = ways[k] > 0 && 2 * ways[k] <= ways[ways.length - 1];
    if (isEnd && radiusAt(ways, radii, 2 * ways[k]) <= TAPER_GROWTH * radii[k]) {
      return;
    }
    part[edges[k]] = TAPER;
  }
}

/** Clearance at a way from the tip, linear between nodes; the last one beyond the end. */
function radiusAt(ways: readonly number[], radii: readonly number[], way: number): number {
  let low = 0;
  let high = ways.length - 1;
  if (way >= ways[high]) {
    return radii[high];
  }
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (ways[middle] <= way) {
      low = middle;
    } else {
      high = middle;
    }
  }
  const span = ways[high] - ways[low];
  return span > 0 ? radii[low] + ((radii[high] - radii[low]) * (way - ways[low])) / span : radii[low];
}
