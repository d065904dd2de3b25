import { pollStep, UnionFind } from '@pourproof/plane';

/** Steps of a trail: an edge walked forwards is `2 * edge`, backwards `2 * edge + 1`. */
export type Trail = number[];

/**
 * Euler trails: together they walk every edge of a graph exactly once. For each connected part, one closed
 * trail if all nodes have even degree, else half as many open trails as there are odd nodes. Hierholzer's
 * algorithm (1873); linear time.
 */
export function eulerTrails(nodeCount: number, from: ArrayLike<number>, to: ArrayLike<number>): Trail[] {
  const graph = withOddNodesPaired(nodeCount, from, to);
  const real = from.length;
  const isWalked = new Uint8Array(graph.from.length);
  const next = graph.first.slice(0, nodeCount);
  const trails: Trail[] = [];
  for (let start = 0; start < nodeCount; start++) {
    if (next[start] < graph.first[start + 1]) {
      const circuit = circuitFrom(start, graph, isWalked, next);
      trails.push(...splitAtPairings(circuit, real));
    }
  }
  return trails;
}

interface Graph {
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** Edges at each node, as steps away from it. */
  readonly first: Int32Array;
  readonly at: Int32Array;
}

/** The graph with an extra edge between every two odd nodes of a part, so that closed trails exist. */
function withOddNodesPaired(nodeCount: number, from: ArrayLike<number>, to: ArrayLike<number>): Graph {
  const allFrom = Array.from(from);
  const allTo = Array.from(to);
  const degree = new Int32Array(nodeCount);
  const parts = new UnionFind(nodeCount);
  for (let e = 0; e < from.length; e++) {
    pollStep();
    degree[from[e]]++;
    degree[to[e]]++;
    parts.join(from[e], to[e]);
  }
  const waiting = new Map<number, number>();
  for (let v = 0; v < nodeCount; v++) {
    if (degree[v] % 2 === 1) {
      const key = parts.find(v);
      const other = waiting.get(key);
      if (other === undefined) {
        waiting.set(key, v);
      } else {
        waiting.delete(key);
        allFrom.push(other);
        allTo.push(v);
        degree[other]++;
        degree[v]++;
      }
    }
  }
  const first = new Int32Array(nodeCount + 1);
  for (let v = 0; v < nodeCount; v++) {
    first[v + 1] = first[v] + degree[v];
  }
  const fill = first.slice(0, nodeCount);
  const at = new Int32Array(first[nodeCount]);
  for (let e = 0; e < allFrom.length; e++) {
    at[fill[allFrom[e]]++] = 2 * e;
    at[fill[allTo[e]]++] = 2 * e + 1;
  }
  return { from: allFrom, to: allTo, first, at };
}

/** A closed trail over all edges of the part that a node is in. */
function circuitFrom(start: number, graph: Graph, isWalked: Uint8Array, next: Int32Array): Trail {
  const circuit: Trail = [];
  const nodes = [start];
  const steps: number[] = [];
  while (nodes.length > 0) {
    pollStep();
    const v = nodes[nodes.length - 1];
    while (next[v] < graph.first[v + 1] && isWalked[graph.at[next[v]] >> 1] !== 0) {
      next[v]++;
    }
    if (next[v] < graph.first[v + 1]) {
      const step = graph.at[next[v]++];
      isWalked[step >> 1] = 1;
      steps.push(step);
      nodes.push((step & 1) === 0 ? graph.to[step >> 1] : graph.from[step >> 1]);
    } else {
      nodes.pop();
      const step = steps.pop();
      if (step !== undefined) {
        circuit.push(step);
      }
    }
  }
  return circuit.reverse();
}

/** The stretches of a closed trail between extra edges; the whole trail where there are none. */
function splitAtPairings(circuit: Trail, real: number): Trail[] {
  const cut = circuit.findIndex((step) => step >> 1 >= real);
  if (cut < 0) {
    return [circuit];
  }
  const trails: Trail[] = [];
  let trail: Trail = [];
  for (const step of [...circuit.slice(cut + 1), ...circuit.slice(0, cut + 1)]) {
    if (step >> 1 < real) {
      trail.push(step);
    } else {
      // no node has two extra edges: one never follows another
      trails.push(trail);
      trail = [];
    }
  }
  return trails;
}
