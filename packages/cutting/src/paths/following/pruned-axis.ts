import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';

/** The parts of the axis that a cutter has to follow. */
export interface PrunedAxis {
  /** 1 for each axis edge to follow. */
  readonly isKept: Uint8Array;
  /**
   * Nodes left alone when all their branches were pruned: everything around lies within the tolerance of
   * their discs.
   */
  readonly lonely: readonly number[];
}

/** A branch that reaches beyond the disc at its root by a smaller share of its clearance starts at a point flush in a wall: rounding. */
const FLUSH_REL_TOL = 1e-9;

/**
 * Prunes the axis: drops secondary edges, and branches whose discs reach no more than `ignoreMm`, along the axis, beyond the
 * disc at their root, such as those into the corners between chords of a flattened curve. A branch is dropped or kept as a whole, from its
 * corner or from where others meet, wherever it has nodes. Linear time.
 */
export function prunedAxis(axis: MedialAxis, ignoreMm: number): PrunedAxis {
  const { edgeFrom, edgeTo, nodeR, bottleneckCount } = axis;
  const count = edgeFrom.length;
  const shape = new AxisEdge(axis);
  const isKept = new Uint8Array(count);
  const risingFrom = new Int32Array(nodeR.length).fill(-1);
  const upCount = new Int32Array(nodeR.length);
  const pending = new Int32Array(nodeR.length);
  const isOnAxis = new Uint8Array(nodeR.length);
  for (let e = 0; e < count; e++) {
    pollStep();
    if (!shape.isSecondary(e)) {
      isKept[e] = 1;
      risingFrom[edgeFrom[e]] = e;
      upCount[edgeFrom[e]]++;
      pending[edgeTo[e]]++;
      isOnAxis[edgeFrom[e]] = 1;
      isOnAxis[edgeTo[e]] = 1;
    }
  }
  // upper bound on how far the discs below a node reach beyond its own
  const beyond = new Float64Array(nodeR.length);
  // the edge of the branch dropped below each node, -1 for none, -2 for several
  const dropped = new Int32Array(nodeR.length).fill(-1);
  const ready: number[] = [];
  for (let v = bottleneckCount; v < nodeR.length; v++) {
    if (isOnAxis[v] !== 0 && pending[v] === 0) {
      ready.push(v);
    }
  }
  const lonely: number[] = [];
  for (let v = ready.pop(); v !== undefined; v = ready.pop()) {
    pollStep();
    if (upCount[v] === 0) {
      lonely.push(v);
      continue;
    }
    const e = risingFrom[v];
    const w = edgeTo[e];
    shape.load(e);
    const reach = shape.lengthBetween(0, 1) + nodeR[v] + beyond[v] - nodeR[w];
    if (upCount[v] === 1 && reach <= ignoreMm) {
      isKept[e] = 0;
      beyond[w] = Math.max(beyond[w], reach);
      if (reach > FLUSH_REL_TOL * nodeR[w]) {
        dropped[w] = dropped[w] === -1 ? e : -2;
      }
      pending[w]--;
      if (pending[w] === 0 && w >= bottleneckCount) {
        ready.push(w);
      }
    } else {
      for (let below = dropped[v]; below >= 0; below = dropped[edgeFrom[below]]) {
        isKept[below] = 1;
      }
    }
  }
  return { isKept, lonely };
}
