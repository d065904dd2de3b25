import { pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { type LevelRuns, levelRuns } from './level-runs.ts';

/**
 * A branch to the boundary is a corner unless it reaches beyond the disc at its root by more than this many
 * times the clearance there: corners of 60° and more reach at most once (1/sin 30° − 1).
 */
const CORNER_REACH = 1;
/**
 * Relative tolerance on a clearance: what reaches farther beyond a corner by less than this share of it does so by
 * rounding, as the tips of a regular triangle do.
 */
const REACH_REL_TOL = 1e-9;

/** The longest paths down the axis to the boundary, and the graph of the edges that reach beyond corners. */
export interface BeyondCorners extends LevelRuns {
  /**
   * Longest path from each node down to the boundary, and along all that is level with it, mm; infinite from
   * bottlenecks, which lead on to another part.
   */
  readonly reach: Float64Array;
  /** 1 for runs from which an edge rises, told of the node that stands for the run. */
  readonly hasRise: Uint8Array;
  /** 1 for each edge that reaches beyond a corner at its high end and is longer than rounding. */
  readonly isBeyond: Uint8Array;
  /** Those of them, in order, that do not at their low end. */
  readonly beginning: readonly number[];
  /** Edges that do so at their low end but not at the high one: they lead into a wide place, as petals do. They are no part of the graph. */
  readonly passing: readonly number[];
  /**
   * How many edges beyond corners end at each place, at most 3, and the exclusive or of their numbers, told of the node
   * that stands for the place.
   */
  readonly degree: Uint8Array;
  readonly otherEdge: Int32Array;
}

/** Goes up the axis from the boundary; near linear time. */
export function beyondCorners(axis: MedialAxis): BeyondCorners {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const runs = levelRuns(axis);
  const { length, isLevel, same, run } = runs;
  const { reach, hasRise } = reachesOf(axis, runs);
  const isBeyond = new Uint8Array(edgeFrom.length);
  const beginning: number[] = [];
  const passing: number[] = [];
  const degree = new Uint8Array(nodeR.length);
  const otherEdge = new Int32Array(nodeR.length);
  for (let e = 0; e < length.length; e++) {
    pollStep();
    const from = same[edgeFrom[e]];
    const to = same[edgeTo[e]];
    const before = reach[run[from]];
    // level edges count as a whole
    const way = isLevel[e] === 0 ? before + length[e] : before;
    if (length[e] < 0 || from === to) {
      continue;
    }
    if (excessBeyondCorner(way, nodeR[edgeTo[e]]) <= 0) {
      if (isLevel[e] === 0 && excessBeyondCorner(before, nodeR[edgeFrom[e]]) > 0) {
        passing.push(e);
      }
      continue;
    }
    isBeyond[e] = 1;
    if (isLevel[e] === 0 && excessBeyondCorner(before, nodeR[edgeFrom[e]]) <= 0) {
      beginning.push(e);
    }
    degree[from] = Math.min(degree[from] + 1, 3);
    degree[to] = Math.min(degree[to] + 1, 3);
    otherEdge[from] ^= e;
    otherEdge[to] ^= e;
  }
  for (let k = 0; k < reach.length; k++) {
    reach[k] = reach[run[k]];
  }
  return { ...runs, reach, hasRise, isBeyond, beginning, passing, degree, otherEdge };
}

/** Reach and rise of each run, told of the node that stands for it. */
function reachesOf(axis: MedialAxis, { length, isLevel, run, runLength }: LevelRuns) {
  const { edgeFrom, edgeTo, nodeR, bottleneckCount } = axis;
  const reach = new Float64Array(nodeR.length);
  const hasRise = new Uint8Array(nodeR.length);
  // the edges that rise from each run, as a list from the last one back to the first, and how many that come up to it are not done
  const waiting = new Int32Array(nodeR.length);
  const lastUp = new Int32Array(nodeR.length).fill(-1);
  const upBefore = new Int32Array(length.length);
  for (let e = 0; e < length.length; e++) {
    pollStep();
    if (length[e] >= 0 && isLevel[e] === 0) {
      const from = run[edgeFrom[e]];
      waiting[run[edgeTo[e]]]++;
      upBefore[e] = lastUp[from];
      lastUp[from] = e;
    }
  }
  for (let k = 0; k < bottleneckCount; k++) {
    reach[run[k]] = Infinity;
  }
  const ready: number[] = [];
  for (let k = 0; k < nodeR.length; k++) {
    pollStep();
    if (run[k] === k && waiting[k] === 0) {
      ready.push(k);
    }
  }
  for (let from = ready.pop(); from !== undefined; from = ready.pop()) {
    pollStep();
    reach[from] += runLength[from];
    hasRise[from] = lastUp[from] >= 0 ? 1 : 0;
    for (let e = lastUp[from]; e >= 0; e = upBefore[e]) {
      const to = run[edgeTo[e]];
      reach[to] = Math.max(reach[to], reach[from] + length[e]);
      if (--waiting[to] === 0) {
        ready.push(to);
      }
    }
  }
  return { reach, hasRise };
}

/**
 * How far a path from the boundary to a point of the axis with this clearance reaches beyond a corner, mm.
 */
export function excessBeyondCorner(way: number, clearance: number): number {
  return way - clearance - (CORNER_REACH + REACH_REL_TOL) * clearance;
}
