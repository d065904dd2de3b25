import type { Boundary } from './boundary.ts';

/** Edges in each leaf of the tree. */
export const LEAF_EDGES = 4;

/** Numbers per box: centre, unit direction of one side, half extents along it and across it. */
export const BOX_STRIDE = 6;

/**
 * Oriented bounding boxes around runs of consecutive edges, as a binary tree in heap order: node k has the
 * children 2k and 2k + 1, node `leafStart + i` the edges from `LEAF_EDGES · i` on. Each box lies along the
 * chord of its run, so that runs of long slanting edges do not fill each other's boxes. Consecutive edges lie
 * close together, so that nothing has to be sorted; this is why it is no `BoxIndex`.
 */
export interface ObbTree {
  /** Six numbers per node, see {@link BOX_STRIDE}; nodes without edges have negative half extents. */
  readonly boxes: Float64Array;
  readonly leafStart: number;
}

/** The tree over all edges of a boundary; O(n log n), each box as tight as its direction allows. */
export function obbTree(boundary: Boundary): ObbTree {
  const { count } = boundary;
  let leafStart = 1;
  while (leafStart * LEAF_EDGES < count) {
    leafStart *= 2;
  }
  const boxes = new Float64Array(2 * leafStart * BOX_STRIDE);
  let run = LEAF_EDGES;
  for (let level = leafStart; level >= 1; level >>= 1) {
    for (let k = 0; k < level; k++) {
      fit(boundary, k * run, Math.min(count, (k + 1) * run), boxes, (level + k) * BOX_STRIDE);
    }
    run *= 2;
  }
  return { boxes, leafStart };
}

/** Writes the box around edges `from` … `to − 1`, along the chord from the first point to the last. */
function fit(boundary: Boundary, from: number, to: number, boxes: Float64Array, at: number): void {
  if (from >= to) {
    boxes[at + 4] = -1;
    boxes[at + 5] = -1;
    return;
  }
  const { x, y, next } = boundary;
  const x0 = x[from];
  const y0 = y[from];
  const end = next[to - 1];
  let ux = x[end] - x0;
  let uy = y[end] - y0;
  const chord = Math.sqrt(ux * ux + uy * uy);
  ux = chord > 0 ? ux / chord : 1;
  uy = chord > 0 ? uy / chord : 0;
  let minU = 0;
  let maxU = 0;
  let minV = 0;
  let maxV = 0;
  let start = from;
  for (let i = from; i <= to; i++) {
    // the end points of the edges are all points except one: the start of a ring that the run does not
    // complete
    const j = i < to ? next[i] : start;
    if (j !== i + 1 && i + 1 < to) {
      start = i + 1;
    }
    const dx = x[j] - x0;
    const dy = y[j] - y0;
    const u = dx * ux + dy * uy;
    const v = dy * ux - dx * uy;
    if (u < minU) {
      minU = u;
    }
    if (u > maxU) {
      maxU = u;
    }
    if (v < minV) {
      minV = v;
    }
    if (v > maxV) {
      maxV = v;
    }
  }
  const u = (minU + maxU) / 2;
  const v = (minV + maxV) / 2;
  boxes[at] = x0 + u * ux - v * uy;
  boxes[at + 1] = y0 + u * uy + v * ux;
  boxes[at + 2] = ux;
  boxes[at + 3] = uy;
  boxes[at + 4] = (maxU - minU) / 2;
  boxes[at + 5] = (maxV - minV) / 2;
}
