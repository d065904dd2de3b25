import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { LEVEL_REL_TOL } from '../medial-axis/tolerances.ts';
import { AxisEdge } from './axis-edge.ts';
import { beyondCorners, excessBeyondCorner } from './beyond-corners.ts';
import { type EndBranch, endBranch, radiusAt } from './end-branch.ts';

/** What a piece of the axis carries: only a corner, a stroke, or the taper at the end of a stroke. */
export const CORNER = 0;
export const STROKE = 1;
export const TAPER = 2;

/** The axis sorted into corners, strokes and tapers. */
export interface StrokeParts {
  /** {@link CORNER}, {@link STROKE} or {@link TAPER} for each axis edge; secondary edges are corners. */
  readonly part: Uint8Array;
  /**
   * Share of each edge, from its low end, at which its part begins; above 0 only where a stroke begins within
   * the edge.
   */
  readonly start: Float64Array;
  /** Length of each whole edge, mm; -1 for secondary edges. */
  readonly length: Float64Array;
  /** Nodes from which no edge rises, local maxima of the clearance, except for waves of a taper. */
  readonly tops: readonly number[];
  /** Longest path down from each node to the boundary, mm; infinite from bottlenecks. */
  readonly reach: Float64Array;
  /** How many edges that reach beyond corners end at each node, at most 3. */
  readonly degree: Uint8Array;
}

/**
 * Where a taper has gained clearance at least at this rate all along from its tip, it is a corner too, if it
 * is within {@link TAPER_GROWTH} of its full width: a tip whose sides meet at 39° or more (sin 19.5°). A flat
 * bit leaves at most its own diameter of it. Our choice.
 */
const CORNER_SLOPE = Math.sin((19.5 * Math.PI) / 180);
/**
 * A branch that narrows to its end is a taper up to where doubling the distance from the tip widens it by at
 * most this factor.
 */
export const TAPER_GROWTH = 1.25;
/**
 * A blunt end is the end of a stroke if, over this many of its half widths or half the branch, whichever is
 * shorter, it widens by at most {@link BLUNT_GROWTH}; else it is the rounded tip of a taper.
 */
const BLUNT_LENGTH = 12;
const BLUNT_GROWTH = 1.4;
/**
 * A blunt end that widens by less is still the tip of a needle if doubling the distance from where its flanks
 * would meet widens it by this factor.
 */
const NEEDLE_GROWTH = 1.6;
/**
 * Relative tolerance, on the edge and on the clearance, of where a stroke begins within an edge, and the
 * steps at most to find it.
 */
const START_REL_TOL = 1e-12;
const START_STEPS = 60;
/**
 * A rounded tip is at least this many times narrower than the wide end of its branch; otherwise the stroke
 * just narrows.
 */
const TIP_RATIO = 4;

/** Sorts the edges of the axis into corners, strokes and tapers; linear time. */
export function strokeParts(axis: MedialAxis): StrokeParts {
  const { edgeFrom, nodeR, bottleneckCount } = axis;
  const graph = beyondCorners(axis);
  const { length, reach, hasRise, beginning, degree } = graph;
  // isBeyond holds STROKE where set, else CORNER: tapers remain to be found
  const part = graph.isBeyond;
  const start = new Float64Array(length.length);
  const edge = new AxisEdge(axis);
  for (const e of beginning) {
    edge.load(e);
    start[e] = strokeStart(edge, reach[edgeFrom[e]]);
  }
  const ends: number[] = [];
  const tops: number[] = [];
  for (let k = bottleneckCount; k < nodeR.length; k++) {
    if (degree[k] === 1) {
      ends.push(k);
    }
    if (nodeR[k] > 0 && hasRise[k] === 0) {
      tops.push(k);
    }
  }
  for (const end of ends) {
    markTaper(endBranch(axis, end, graph), { part, start, hasRise });
  }
  return { part, start, length, tops: tops.filter((k) => hasRise[k] === 0), reach, degree };
}

/**
 * Share of the loaded edge at which a path from the boundary leaves the corner, so that the stroke does not
 * depend on where a flattened arc has its points. Level edges count as a whole: which of their ends is lower
 * is rounding.
 */
function strokeStart(edge: AxisEdge, wayBefore: number): number {
  if (edge.r0 >= edge.r1 * (1 - LEVEL_REL_TOL)) {
    return 0;
  }
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
  for (let k = 0; k < START_STEPS && high - low > START_REL_TOL && atHigh > atLow; k++) {
    const share = low + (high - low) * Math.min(1, Math.max(0, atLow / (atLow - atHigh)));
    const excess = excessAt(share);
    const isDone = Math.abs(excess) <= START_REL_TOL * edge.clearance;
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

/** The marks along branches. */
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

/**
 * How many edges of a taper that ends at node `end` are a corner: all steep ones, if it is nearly as wide
 * there as it gets.
 */
function cornerEnd({ ways, radii }: EndBranch, end: number): number {
  let steep = 0;
  while (steep < end && radii[steep + 1] - radii[0] >= CORNER_SLOPE * (ways[steep + 1] - ways[0])) {
    steep++;
  }
  return TAPER_GROWTH * radii[steep] >= radii[end] ? steep : 0;
}

/**
 * Distance before the end of a branch at which the flanks of a taper would meet; negative for the end of a
 * stroke.
 */
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
