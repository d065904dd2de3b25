import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { LEVEL_SHARE } from '../medial-axis/tolerances.ts';
import { AxisEdge } from './axis-edge.ts';
import { edgeLengths } from './edge-lengths.ts';
import { type EndBranch, endBranch, radiusAt } from './end-branch.ts';

/** What a piece of the axis carries: nothing but a corner, a stroke, or the taper at a stroke's end. */
export const CORNER = 0;
export const STROKE = 1;
export const TAPER = 2;

/** The axis sorted into corners, strokes and tapers. */
export interface StrokeParts {
  /** {@link CORNER}, {@link STROKE} or {@link TAPER} for each axis edge; spokes are corners. */
  readonly part: Uint8Array;
  /** Share of the way up at which each edge begins to be what it is; above 0 only where a stroke begins within the edge. */
  readonly start: Float64Array;
  /** Length of each whole edge, mm; -1 for spokes. */
  readonly length: Float64Array;
  /** Nodes from which no edge rises, where the clearance is greatest around, but for waves of a taper. */
  readonly tops: readonly number[];
}

/**
 * A branch that runs into the boundary is a corner unless the way along it reaches more than this many times the clearance at its root beyond
 * the disc there: corners of 60° and more reach at most once (1/sin 30° − 1).
 */
const CORNER_REACH = 1;
/**
 * Where a taper has gained at least this much clearance over its way all along from its tip it is a corner too, if only {@link TAPER_GROWTH} is
 * left to gain: a tip whose sides meet at 39° or more (sin 19.5°). A flat bit leaves no more than its own diameter of it. Our choice.
 */
const CORNER_SLOPE = Math.sin((19.5 * Math.PI) / 180);
/** A branch that narrows to its end is a taper up to where doubling the way from the tip widens it by no more than this factor. */
const TAPER_GROWTH = 1.25;
/**
 * A blunt end is a stroke's end if over this many of its half widths, or half the branch if that is less, it widens by no more than
 * {@link BLUNT_GROWTH}: else it is the rounded tip of a taper.
 */
const BLUNT_LENGTH = 12;
const BLUNT_GROWTH = 1.4;
/** Where a blunt end widens by less, it is still a needle's tip if doubling the way from where its flanks would meet widens it by this factor. */
const NEEDLE_GROWTH = 1.6;
/** Steps by which the place is found where a stroke begins within an edge: 2^-30 of the edge. */
const HALVINGS = 30;
/** A rounded tip is at least this many times narrower than the wide end of its branch; less is a stroke that narrows. */
const TIP_RATIO = 4;

/** Sorts the axis' edges into corners, strokes and tapers; linear time. */
export function strokeParts(axis: MedialAxis): StrokeParts {
  const { edgeFrom, edgeTo, nodeR, neckCount } = axis;
  const edge = new AxisEdge(axis);
  const length = edgeLengths(axis);
  const part = new Uint8Array(length.length);
  const start = new Float64Array(length.length);
  // longest way down from each node to the boundary; necks lead on, to another part
  const reach = new Float64Array(nodeR.length);
  reach.fill(Infinity, 0, neckCount);
  const hasRise = new Uint8Array(nodeR.length);
  const degree = new Uint8Array(nodeR.length);
  const otherEdge = new Int32Array(nodeR.length);
  for (let e = 0; e < length.length; e++) {
    if (length[e] < 0) {
      continue;
    }
    const from = edgeFrom[e];
    const to = edgeTo[e];
    const way = reach[from] + length[e];
    reach[to] = Math.max(reach[to], way);
    hasRise[from] = 1;
    if (isBeyondCorner(way, nodeR[to])) {
      part[e] = STROKE;
      if (!isBeyondCorner(reach[from], nodeR[from])) {
        edge.load(e);
        start[e] = strokeStart(edge, reach[from]);
      }
      degree[from] = Math.min(degree[from] + 1, 3);
      degree[to] = Math.min(degree[to] + 1, 3);
      otherEdge[from] ^= e;
      otherEdge[to] ^= e;
    }
  }
  for (let k = neckCount; k < nodeR.length; k++) {
    if (degree[k] === 1) {
      markTaper(endBranch(axis, k, { length, degree, otherEdge }), { part, start, hasRise });
    }
  }
  const tops: number[] = [];
  for (let k = neckCount; k < nodeR.length; k++) {
    if (hasRise[k] === 0 && nodeR[k] > 0) {
      tops.push(k);
    }
  }
  return { part, start, length, tops };
}

/** Whether the way from the boundary to a point of the axis with this clearance reaches beyond a corner. */
function isBeyondCorner(way: number, clearance: number): boolean {
  return way - clearance > CORNER_REACH * clearance;
}

/**
 * Share of the loaded edge at which the way leaves the corner, so that it does not depend on where a flattened arc has its points. Level
 * edges count as a whole: which of their ends is the lower one is rounding.
 */
function strokeStart(edge: AxisEdge, wayBefore: number): number {
  if (edge.r0 >= edge.r1 * (1 - LEVEL_SHARE)) {
    return 0;
  }
  let low = 0;
  let high = 1;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    edge.atShare(middle);
    if (isBeyondCorner(wayBefore + edge.lengthBetween(0, middle), edge.clearance)) {
      high = middle;
    } else {
      low = middle;
    }
  }
  return high;
}

/** What is marked along branches. */
interface Marks {
  readonly part: Uint8Array;
  readonly start: Float64Array;
  readonly hasRise: Uint8Array;
}

/** Marks the taper at the end of a branch, if it tapers. */
function markTaper(branch: EndBranch, { part, start, hasRise }: Marks): void {
  const before = wayBeforeTip(branch);
  if (before < 0) {
    return;
  }
  const { edges, nodes, radii } = branch;
  const ways = branch.ways.map((way) => way + before);
  const shifted = { ...branch, ways };
  const whole = ways[ways.length - 1];
  let end = 0;
  while (end < edges.length) {
    const doubled = 2 * ways[end];
    if (doubled > 0 && doubled <= whole && radiusAt(shifted, doubled) <= TAPER_GROWTH * radii[end]) {
      break;
    }
    end++;
  }
  const corner = cornerEnd(branch, end);
  for (let k = 0; k < end; k++) {
    part[edges[k]] = k < corner ? CORNER : TAPER;
    start[edges[k]] = 0;
    hasRise[nodes[k]] = 1;
  }
}

/** How many of the edges of a taper that ends at node `end` are a corner: all that are steep, if with them it is nearly as wide as it gets. */
function cornerEnd({ ways, radii }: EndBranch, end: number): number {
  let steep = 0;
  while (steep < end && radii[steep + 1] - radii[0] >= CORNER_SLOPE * (ways[steep + 1] - ways[0])) {
    steep++;
  }
  return TAPER_GROWTH * radii[steep] >= radii[end] ? steep : 0;
}

/** By how much the way counts from before the end of a branch, where the flanks of a taper would meet; negative for a stroke's end. */
function wayBeforeTip(branch: EndBranch): number {
  const { ways, radii } = branch;
  const tip = radii[0];
  const whole = ways[ways.length - 1];
  if (tip === 0) {
    return 0;
  }
  if (radii[radii.length - 1] < TIP_RATIO * tip) {
    return -1;
  }
  const look = Math.min(BLUNT_LENGTH * tip, whole / 2);
  const growth = radiusAt(branch, look) - tip;
  if (!(growth > 0)) {
    return -1;
  }
  const before = (tip * look) / growth;
  const isNeedle = before <= whole && radiusAt(branch, before) >= NEEDLE_GROWTH * tip;
  return growth > (BLUNT_GROWTH - 1) * tip || isNeedle ? before : -1;
}
