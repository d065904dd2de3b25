import type { EdgeRuns } from './edge-runs.ts';

/** Numbers per box: centre, unit direction of one side, half extents along it and across it. */
export const BOX_STRIDE = 6;

/** Numbers per pair of slanted sides: outward unit normal and limit, twice. */
export const SIDES_STRIDE = 6;

/**
 * Oriented bounding boxes around runs of consecutive edges, as a binary tree in heap order: node k has the
 * children 2k and 2k + 1, the nodes from `leafStart` on hold one run each or none. Runs that lie near each
 * other share a node, wherever they stand in the list of edges: walls of one stroke, turns of a spiral, holes
 * in any order.
 */
export interface ObbTree {
  /** Six numbers per node, see {@link BOX_STRIDE}; nodes without edges have negative half extents. */
  readonly boxes: Float64Array;
  readonly leafStart: number;
  /**
   * 1 for nodes of long edges that run together at one end, as spikes do: two slanted sides fit them much
   * closer than their box. All that is in the node lies where normal · point ≤ limit, for both sides.
   */
  readonly isSlanted: Uint8Array;
  readonly sides: Float64Array;
  readonly runs: EdgeRuns;
  /** First edge of the run of each leaf, and the edge after its last; equal where it has none. */
  readonly leafFrom: Int32Array;
  readonly leafTo: Int32Array;
  /** Leaf of each run, as a node. */
  readonly leafOfRun: Int32Array;
}

/** A tree for so many leaves, a power of two, that holds nothing yet. */
export function emptyTree(runs: EdgeRuns, leafStart: number): ObbTree {
  return {
    boxes: new Float64Array(2 * leafStart * BOX_STRIDE).fill(-1),
    leafStart,
    isSlanted: new Uint8Array(2 * leafStart),
    sides: new Float64Array(2 * leafStart * SIDES_STRIDE),
    runs,
    leafFrom: new Int32Array(leafStart),
    leafTo: new Int32Array(leafStart),
    leafOfRun: new Int32Array(runs.count),
  };
}
