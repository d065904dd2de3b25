import type { AxisEdge, MedialAxis } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';

/** The axis edges that are not secondary, in the order in which the clearance rises, and how they meet. */
export interface RisingOrder {
  /**
   * Edges: each of the first `sure` comes after all that end where it starts; the rest lie on or above level
   * cycles.
   */
  readonly edges: readonly number[];
  readonly sure: number;
  /** Edges that end, and that start, at each node. */
  readonly ending: readonly (readonly number[])[];
  readonly starting: readonly (readonly number[])[];
}

/**
 * Orders the edges so that what is known at the end of one is known before those that start there: a
 * topological order.
 */
export function risingOrder({ edgeFrom, edgeTo, nodeR }: MedialAxis, edge: AxisEdge): RisingOrder {
  const ending: number[][] = Array.from(nodeR, () => []);
  const starting: number[][] = Array.from(nodeR, () => []);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    if (!edge.isSecondary(e)) {
      ending[edgeTo[e]].push(e);
      starting[edgeFrom[e]].push(e);
    }
  }
  const open = Int32Array.from(ending, (list) => list.length);
  const ready = [...starting.keys()].filter((v) => open[v] === 0);
  const edges: number[] = [];
  for (let v = ready.pop(); v !== undefined; v = ready.pop()) {
    pollStep();
    edges.push(...starting[v]);
    for (const e of starting[v]) {
      open[edgeTo[e]]--;
      if (open[edgeTo[e]] === 0) {
        ready.push(edgeTo[e]);
      }
    }
  }
  const sure = edges.length;
  const known = new Set(edges);
  edges.push(...starting.flat().filter((e) => !known.has(e)));
  return { edges, sure, ending, starting };
}
