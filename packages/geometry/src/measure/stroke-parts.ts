import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { LEVEL_REL_TOL } from '../medial-axis/tolerances.ts';
import { AxisEdge } from './axis-edge.ts';
import { beyondCorners, excessBeyondCorner } from './beyond-corners.ts';
import { type EndBranch, endBranch, radiusAt } from './end-branch.ts';

/** What a piece of the axis carries: nothing but a corner, a stroke, or the taper at a stroke's end. */
export const CORNER = 0;
export const STROKE = 1;
export const TAPER = 2;

/** The axis sorted into corners, strokes and tapers. */
export interface StrokeParts {
  /** {@link CORNER}, {@link STROKE} or {@link TAPER} for each axis edge; secondary edges are corners. */
  readonly part: Uint8Array;
  /** Share of the way up at which each edge begins to be what it is; above 0 only where a stroke begins within the edge. */
  readonly start: Float64Array;
  /** Length of each whole edge, mm; -1 for secondary edges. */
  readonly length: Float64Array;
  /** Nodes from which no edge rises, where the clearance is greatest around, but for waves of a taper. */
  readonly tops: readonly number[];
}

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
/** How closely the place is found where a stroke begins within an edge, as a share of the edge and of the clearance, and in how many steps at most. */
const START_REL_TOL = 1e-12;
const START_STEPS = 60;
/** A rounded tip is at least this many times narrower than the wide end of its branch; less is a stroke that narrows. */
const TIP_RATIO = 4;

/** Sorts the axis' edges into corners, strokes and tapers; linear time. */
export function strokeParts(axis: MedialAxis): StrokeParts {
  const { edgeFrom, nodeR, bottleneckCount } = axis;
  const graph = beyondCorners(axis);
  const { length, reach, hasRise, beginning, degree } = graph;
  // what is beyond corners is STROKE, else CORNER: it remains to find the tapers
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
  return { part, start, length, tops: tops.filter((k) => hasRise[k] === 0) };
}

/**
 * Share of the loaded edge at which the way leaves the corner, so that it does not depend on where a flattened arc has its points. Level
 * edges count as a whole: which of their ends is the lower one is rounding.
 */
function strokeStart(edge: AxisEdge, wayBefore: number): number {
  if (edge.r0 >= edge.r1 * (1 - LEVEL_REL_TOL)) {
    return 0;
  }
  const excessAt = (share: number): number => {
    edge.atShare(share);
    return excessBeyondCorner(wayBefore + edge.lengthBetween(0, share), edge.clearance);
  };
  // false position, with the side that stays weighted less and less (Illinois)
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
