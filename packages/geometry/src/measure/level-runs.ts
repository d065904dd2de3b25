import { pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { parabolaArc } from './parabola-length.ts';

/**
 * An edge whose clearance rises by no more than this share of its length is level: a micrometre in a metre. Which of
 * its ends is the lower one is rounding or means nothing.
 */
export const LEVEL_SLOPE = 1e-6;

/**
 * Relative tolerance on a clearance: nodes nearer to each other than this share of it are at one place. Where many
 * discs are one, rounding parts their centres by 1e-12 of the clearance and less.
 */
const SAME_PLACE_REL_TOL = 1e-9;

/** Rounding of a clearance, relative to the clearance: rises below it are none on however short an edge. */
const RISE_REL_TOL = 1e-12;

/** The edges of the axis by their lengths, and the nodes that rounding alone tells apart or sets above one another. */
export interface LevelRuns {
  /** Length of each edge, mm; -1 for secondary edges. */
  readonly length: Float64Array;
  /** 1 for edges that are level, as those are that are no longer than rounding. */
  readonly isLevel: Uint8Array;
  /** For each node the one that stands for all at the same place, as where the tips of a star meet. */
  readonly same: Int32Array;
  /** For each node the one that stands for all that level edges join. */
  readonly run: Int32Array;
  /** Length of the level edges of each run, mm, told of the node that stands for it. */
  readonly runLength: Float64Array;
}

/** Measures the edges and joins what is level; near linear time. */
export function levelRuns(axis: MedialAxis): LevelRuns {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const length = edgeLengths(axis);
  const isLevel = new Uint8Array(length.length);
  const same = new Int32Array(nodeR.length);
  for (let k = 0; k < same.length; k++) {
    same[k] = k;
  }
  const run = same.slice();
  for (let e = 0; e < length.length; e++) {
    pollStep();
    const far = length[e];
    const low = nodeR[edgeFrom[e]];
    if (far < 0) {
      continue;
    }
    // so short an edge is level whatever it rises by: where many sites meet far from the origin, that is more than rounding of a clearance
    const isPlace = far <= SAME_PLACE_REL_TOL * low;
    if (isPlace || nodeR[edgeTo[e]] - low <= LEVEL_SLOPE * far + RISE_REL_TOL * low) {
      isLevel[e] = 1;
      join(run, edgeFrom[e], edgeTo[e]);
    }
    if (isPlace) {
      join(same, edgeFrom[e], edgeTo[e]);
    }
  }
  for (const names of [same, run]) {
    for (let k = 0; k < names.length; k++) {
      pollStep();
      names[k] = find(names, k);
    }
  }
  const runLength = new Float64Array(nodeR.length);
  for (let e = 0; e < length.length; e++) {
    pollStep();
    if (isLevel[e] !== 0) {
      runLength[run[edgeFrom[e]]] += length[e];
    }
  }
  return { length, isLevel, same, run, runLength };
}

function edgeLengths({
  edgeFrom,
  edgeTo,
  edgeLeft,
  edgeRight,
  nodeX,
  nodeY,
  boundary,
}: MedialAxis): Float64Array {
  const { count, x, y, tx, ty, next } = boundary;
  const length = new Float64Array(edgeFrom.length);
  for (let e = 0; e < length.length; e++) {
    pollStep();
    const from = edgeFrom[e];
    const to = edgeTo[e];
    const left = edgeLeft[e];
    const right = edgeRight[e];
    const vx = nodeX[to] - nodeX[from];
    const vy = nodeY[to] - nodeY[from];
    if (left < count === right < count) {
      length[e] = Math.sqrt(vx * vx + vy * vy);
      continue;
    }
    const line = Math.min(left, right);
    const p = Math.max(left, right) - count;
    if (p === line || p === next[line]) {
      length[e] = -1;
      continue;
    }
    const h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
    const s = (nodeX[from] - x[p]) * tx[line] + (nodeY[from] - y[p]) * ty[line];
    length[e] = Math.abs(parabolaArc(h, s, s + vx * tx[line] + vy * ty[line]));
  }
  return length;
}

// sets of nodes as the library of disjoint sets keeps them, in one typed array for some hundred thousand nodes
function find(names: Int32Array, node: number): number {
  let k = node;
  while (names[k] !== k) {
    names[k] = names[names[k]];
    k = names[k];
  }
  return k;
}

function join(names: Int32Array, a: number, b: number): void {
  const i = find(names, a);
  const j = find(names, b);
  names[Math.max(i, j)] = Math.min(i, j);
}
