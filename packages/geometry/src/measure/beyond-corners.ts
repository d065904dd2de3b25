import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { parabolaArc } from './parabola-length.ts';

/**
 * A branch to the boundary is a corner unless it reaches beyond the disc at its root by more than this many
 * times the clearance there: corners of 60° and more reach at most once (1/sin 30° − 1).
 */
const CORNER_REACH = 1;

/** The longest paths down the axis to the boundary, and the graph of the edges that reach beyond corners. */
export interface BeyondCorners {
  /** Length of each edge, mm; -1 for secondary edges. */
  readonly length: Float64Array;
  /**
   * Longest path down from each node to the boundary, mm; infinite from bottlenecks, which lead on to another
   * part.
   */
  readonly reach: Float64Array;
  /** 1 for nodes from which an edge rises. */
  readonly hasRise: Uint8Array;
  /** 1 for each edge that reaches beyond a corner at its high end. */
  readonly isBeyond: Uint8Array;
  /** Those of them, in order, that do not at their low end. */
  readonly beginning: readonly number[];
  /** How many edges beyond corners end at each node, at most 3, and the exclusive or of their numbers. */
  readonly degree: Uint8Array;
  readonly otherEdge: Int32Array;
}

/** One pass up the axis from the boundary; linear time. */
export function beyondCorners(axis: MedialAxis): BeyondCorners {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR, bottleneckCount } = axis;
  const { count, x, y, tx, ty, next } = axis.boundary;
  const length = new Float64Array(edgeFrom.length);
  const reach = new Float64Array(nodeR.length);
  reach.fill(Infinity, 0, bottleneckCount);
  const hasRise = new Uint8Array(nodeR.length);
  const isBeyond = new Uint8Array(edgeFrom.length);
  const beginning: number[] = [];
  const degree = new Uint8Array(nodeR.length);
  const otherEdge = new Int32Array(nodeR.length);
  for (let e = 0; e < length.length; e++) {
    const from = edgeFrom[e];
    const to = edgeTo[e];
    const left = edgeLeft[e];
    const right = edgeRight[e];
    const vx = nodeX[to] - nodeX[from];
    const vy = nodeY[to] - nodeY[from];
    let far: number;
    if (left < count === right < count) {
      far = Math.sqrt(vx * vx + vy * vy);
    } else {
      const line = Math.min(left, right);
      const p = Math.max(left, right) - count;
      if (p === line || p === next[line]) {
        length[e] = -1;
        continue;
      }
      const h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
      const s = (nodeX[from] - x[p]) * tx[line] + (nodeY[from] - y[p]) * ty[line];
      far = Math.abs(parabolaArc(h, s, s + vx * tx[line] + vy * ty[line]));
    }
    length[e] = far;
    hasRise[from] = 1;
    const before = reach[from];
    const way = before + far;
    reach[to] = Math.max(reach[to], way);
    if (excessBeyondCorner(way, nodeR[to]) > 0) {
      isBeyond[e] = 1;
      if (!(excessBeyondCorner(before, nodeR[from]) > 0)) {
        beginning.push(e);
      }
      degree[from] = Math.min(degree[from] + 1, 3);
      degree[to] = Math.min(degree[to] + 1, 3);
      otherEdge[from] ^= e;
      otherEdge[to] ^= e;
    }
  }
  return { length, reach, hasRise, isBeyond, beginning, degree, otherEdge };
}

/**
 * How far a path from the boundary to a point of the axis with this clearance reaches beyond a corner, mm.
 */
export function excessBeyondCorner(way: number, clearance: number): number {
  return way - clearance - CORNER_REACH * clearance;
}
