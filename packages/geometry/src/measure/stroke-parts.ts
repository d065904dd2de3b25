import { pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { LEVEL_REL_TOL } from '../medial-axis/tolerances.ts';
import { AxisEdge } from './axis-edge.ts';
import { type BeyondCorners, beyondCorners } from './beyond-corners.ts';
import { cornerShare, passingShare } from './corner-share.ts';
import { type BranchPlace, EndBranch } from './end-branch.ts';
import { LEVEL_SLOPE } from './level-runs.ts';
import { firstWay, slowingWay, TAPER_GROWTH } from './slowing-way.ts';

/** What a piece of the axis carries: only a corner, a stroke, or the taper at the end of a stroke. */
export const CORNER = 0;
export const STROKE = 1;
export const TAPER = 2;

/** The axis sorted into corners, strokes and tapers. */
export interface StrokeParts {
  /**
   * {@link CORNER}, {@link STROKE} or {@link TAPER} for each axis edge: what its high end is part of. Secondary edges and
   * those no longer than rounding are corners.
   */
  readonly part: Uint8Array;
  /** Share of each edge, from its low end, at which its taper or its stroke begins; what is below is a corner. */
  readonly start: Float64Array;
  /** Share of each edge at which its stroke begins: what lies between `start` and there is taper; 1 for tapers. */
  readonly strokeStart: Float64Array;
  /** Share of each edge at which its stroke or taper ends: 1, but where it leads into a place so wide that all of it is a corner of that. */
  readonly end: Float64Array;
  /** Length of each whole edge, mm; -1 for secondary edges. */
  readonly length: Float64Array;
  /** For each node the one that stands for all at the same place. */
  readonly same: Int32Array;
  /** Longest path from each node down to the boundary, mm; infinite from bottlenecks. */
  readonly reach: Float64Array;
  /** How many edges that reach beyond corners end at each place, at most 3, told of the node that stands for it. */
  readonly degree: Uint8Array;
  /** Places from which no edge rises, local maxima of the clearance, except for waves of a taper. */
  readonly tops: readonly number[];
}

/**
 * Where a taper has gained clearance at least at this rate all along from its tip, it is a corner too, if it
 * is within {@link TAPER_GROWTH} of its full width: a tip whose sides meet at 39° or more (sin 19.5°). A flat
 * bit leaves at most its own diameter of it. Our choice.
 */
const CORNER_SLOPE = Math.sin((19.5 * Math.PI) / 180);
/** The rate of that, share of the width by share of the way: what grows by it all along grows so much in doubling. */
const TAPER_RATE = Math.log2(TAPER_GROWTH);
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
 * A branch begins two clearances along it from its corners, {@link beyondCorners}. From where those of a square end meet,
 * √2 clearances from them, that is so many clearances in a parallel stroke, and more in one that widens.
 */
const SQUARE_END = 2 - Math.SQRT2;
/**
 * A rounded tip is at least this many times narrower than the wide end of its branch; otherwise the stroke
 * just narrows.
 */
const TIP_RATIO = 4;

const known = new WeakMap<MedialAxis, StrokeParts>();

/** Sorts the edges of the axis into corners, strokes and tapers; linear time, once for every axis. */
export function strokeParts(axis: MedialAxis): StrokeParts {
  const parts = known.get(axis) ?? sortedParts(axis);
  known.set(axis, parts);
  return parts;
}

function sortedParts(axis: MedialAxis): StrokeParts {
  const { edgeFrom, nodeR, bottleneckCount } = axis;
  const graph = beyondCorners(axis);
  const { length, reach, same, run, hasRise, beginning, degree } = graph;
  // isBeyond holds STROKE where set, else CORNER: tapers remain to be found
  const part = graph.isBeyond;
  const start = new Float64Array(length.length);
  const edge = new AxisEdge(axis);
  for (const e of beginning) {
    edge.load(e);
    start[e] = cornerShare(edge, reach[edgeFrom[e]]);
  }
  const strokeStart = start.slice();
  const end = new Float64Array(length.length).fill(1);
  const ends: number[] = [];
  const tops: number[] = [];
  for (let k = bottleneckCount; k < nodeR.length; k++) {
    pollStep();
    if (same[k] === k && degree[k] === 1) {
      ends.push(k);
    }
    if (run[k] === k && nodeR[k] > 0 && hasRise[k] === 0) {
      tops.push(k);
    }
  }
  const marks = { part, start, strokeStart, run, hasRise };
  for (const free of ends) {
    pollStep();
    markTaper(new EndBranch(axis, free, graph, start, edge), marks);
  }
  markPassing(axis, graph, { part, strokeStart, end });
  return {
    part,
    start,
    strokeStart,
    end,
    length,
    same,
    reach,
    degree,
    tops: tops.filter((k) => hasRise[k] === 0),
  };
}

/**
 * Marks what leads on into a wide place, as what it comes from, up to where it is a corner of that. Whether that is a taper does not hang on
 * it: into a wide place any strand widens.
 */
function markPassing(
  axis: MedialAxis,
  { passing, reach, same, degree, otherEdge }: BeyondCorners,
  { part, strokeStart, end }: Pick<StrokeParts, 'part' | 'strokeStart' | 'end'>,
): void {
  const edge = new AxisEdge(axis);
  const kinds = passing.map((e) => {
    const place = same[axis.edgeFrom[e]];
    return degree[place] === 1 ? part[otherEdge[place]] : STROKE;
  });
  for (const [k, e] of passing.entries()) {
    if (kinds[k] !== CORNER) {
      edge.load(e);
      part[e] = kinds[k];
      end[e] = passingShare(edge, reach[axis.edgeFrom[e]]);
      strokeStart[e] = kinds[k] === TAPER ? 1 : 0;
      degree[same[axis.edgeFrom[e]]]++;
    }
  }
}

/** The marks along branches. */
interface Marks extends Pick<StrokeParts, 'part' | 'start' | 'strokeStart'> {
  readonly run: Int32Array;
  readonly hasRise: Uint8Array;
}

/** Marks the taper at the end of a branch, if it tapers. */
function markTaper(branch: EndBranch, { part, start, strokeStart, run, hasRise }: Marks): void {
  const before = wayBeforeTip(branch);
  if (before < 0) {
    return;
  }
  const { edges, nodes, radii } = branch;
  const endWay = taperEnd(branch, before);
  const end = branch.placeAt(endWay);
  const corner = cornerEnd(branch, endWay);
  for (let k = 0; k < end.step; k++) {
    part[edges[k]] = k < corner.step ? CORNER : TAPER;
    strokeStart[edges[k]] = 1;
  }
  if (end.share > 0) {
    strokeStart[edges[end.step]] = end.share;
  }
  if (corner.share > 0) {
    start[edges[corner.step]] = corner.share;
  }
  // waves within the taper are no widths of their own, but where it is widest it has a top, as a diamond does
  const widest = radii[radii.length - 1] * (1 - LEVEL_REL_TOL);
  for (let k = 0; k < end.step + Math.ceil(end.share); k++) {
    if (end.step < edges.length || radii[k] < widest) {
      hasRise[run[nodes[k]]] = 1;
    }
  }
}

/**
 * Way from the free end at which a taper ends, mm. Doubling the way from where its flanks would meet, `before` the end,
 * widens it by no more than {@link TAPER_GROWTH}, and it goes on to where it stops to widen at the rate that would do
 * so: in a pointed bar to its shoulder. The whole branch if that is nowhere.
 */
function taperEnd(branch: EndBranch, before: number): number {
  const { ways, edges, wholeMm } = branch;
  const slowing = slowingWay(branch, before);
  if (slowing === null) {
    return wholeMm;
  }
  for (let step = branch.stepAt(slowing); step < edges.length; step++) {
    const excessAt = (way: number): number =>
      branch.slopeOn(step, way) * (way + before) - TAPER_RATE * branch.radiusAt(way);
    const from = Math.max(slowing, ways[step]);
    const to = ways[step + 1];
    if (to > from && excessAt(from) <= 0) {
      return from;
    }
    if (to > from && excessAt(to) <= 0) {
      return firstWay(from, to, excessAt);
    }
  }
  return wholeMm;
}

/**
 * Up to where a taper that ends at a way is a corner: all that is steep, if it is nearly as wide there as it gets.
 */
function cornerEnd(branch: EndBranch, endWay: number): BranchPlace {
  const { ways, radii } = branch;
  const steepAt = (way: number): number =>
    branch.radiusAt(way) - radii[0] - CORNER_SLOPE * (1 - LEVEL_REL_TOL) * way;
  let steepWay = 0;
  for (let k = 1; k < ways.length && steepWay === ways[k - 1] && steepWay < endWay; k++) {
    const way = Math.min(ways[k], endWay);
    steepWay = steepAt(way) >= 0 ? way : firstWay(ways[k - 1], way, steepAt);
  }
  return TAPER_GROWTH * branch.radiusAt(steepWay) >= branch.radiusAt(endWay)
    ? branch.placeAt(steepWay)
    : { step: 0, share: 0 };
}

/**
 * Distance before the beginning of a branch at which the flanks of a taper would meet; negative for the end of
 * a stroke.
 */
function wayBeforeTip(branch: EndBranch): number {
  const { radii, wholeMm } = branch;
  if (radii[0] === 0) {
    return 0;
  }
  const slope = branch.slopeOn(0, 0);
  if (slope <= LEVEL_SLOPE) {
    return -1;
  }
  // back from where the branch begins to where the corners of its end meet
  const back = Math.min(SQUARE_END / Math.max(0, 1 - Math.SQRT2 * slope), 1 / slope) * radii[0];
  const tip = radii[0] - slope * back;
  const whole = back + wholeMm;
  const radiusAt = (way: number): number => (way < back ? tip + slope * way : branch.radiusAt(way - back));
  if (radii[radii.length - 1] < TIP_RATIO * tip) {
    return -1;
  }
  if (tip <= LEVEL_REL_TOL * radii[0]) {
    return back;
  }
  const look = Math.min(BLUNT_LENGTH * tip, whole / 2);
  const growth = radiusAt(look) - tip;
  if (!(growth > 0)) {
    return -1;
  }
  const before = (tip * look) / growth;
  const isNeedle = before <= whole && radiusAt(before) >= NEEDLE_GROWTH * tip;
  return growth > (BLUNT_GROWTH - 1) * tip || isNeedle ? before + back : -1;
}
