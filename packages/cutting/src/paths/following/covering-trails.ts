import { UnionFind } from '@pourproof/plane';
import { eulerTrails } from '../euler-trails.ts';

/**
 * Trails that walk every edge of a graph at least once. An edge is walked twice where that saves a new start:
 * odd nodes are paired along a shortest spanning tree and the ways between them walked again, save those
 * longer than `limitMm` and the longest of each part, which is free. Edges are named as in `eulerTrails`, a
 * doubled edge twice. O(n log n).
 */
export function coveringTrails(
  nodeCount: number,
  from: readonly number[],
  to: readonly number[],
  lengthMm: readonly number[],
  limitMm: number,
): number[][] {
  const doubled = doubledEdges(nodeCount, from, to, lengthMm, limitMm);
  const allFrom = [...from, ...doubled.map((e) => from[e])];
  const allTo = [...to, ...doubled.map((e) => to[e])];
  return eulerTrails(nodeCount, allFrom, allTo).map((trail) =>
    trail.map((step) =>
      step >> 1 < from.length ? step : 2 * doubled[(step >> 1) - from.length] + (step & 1),
    ),
  );
}

/** A way from an odd node up the tree, as a chain of edges. */
interface Way {
  readonly length: number;
  readonly edges: Chain | undefined;
}

interface Chain {
  readonly edge: number;
  readonly rest: Chain | undefined;
}

interface Pairing {
  readonly length: number;
  readonly ways: readonly Way[];
}

function doubledEdges(
  nodeCount: number,
  from: readonly number[],
  to: readonly number[],
  lengthMm: readonly number[],
  limitMm: number,
): number[] {
  const { order, up, root } = spanningTree(nodeCount, from, to, lengthMm);
  const isOdd = new Uint8Array(nodeCount);
  for (let e = 0; e < from.length; e++) {
    isOdd[from[e]] ^= 1;
    isOdd[to[e]] ^= 1;
  }
  const waiting: Way[][] = Array.from({ length: nodeCount }, () => []);
  const pairings = new Map<number, Pairing[]>();
  // leaves first: each node pairs the ways that end in it and sends one on if their number is odd
  for (let i = order.length - 1; i >= 0; i--) {
    const v = order[i];
    const ways = waiting[v];
    if (isOdd[v] !== 0) {
      ways.push({ length: 0, edges: undefined });
    }
    ways.sort((a, b) => b.length - a.length);
    const parent = up[v];
    const sent = ways.length % 2 === 1 ? ways.shift() : undefined;
    for (let k = 0; k < ways.length; k += 2) {
      const list = pairings.get(root[v]) ?? [];
      pairings.set(root[v], list);
      list.push({ length: ways[k].length + ways[k + 1].length, ways: [ways[k], ways[k + 1]] });
    }
    if (sent !== undefined && parent >= 0) {
      const above = from[parent] === v ? to[parent] : from[parent];
      waiting[above].push({
        length: sent.length + lengthMm[parent],
        edges: { edge: parent, rest: sent.edges },
      });
    }
  }
  const doubled: number[] = [];
  for (const list of pairings.values()) {
    list.sort((a, b) => b.length - a.length);
    for (const { length, ways } of list.slice(1)) {
      for (const way of length <= limitMm ? ways : []) {
        for (let chain = way.edges; chain !== undefined; chain = chain.rest) {
          doubled.push(chain.edge);
        }
      }
    }
  }
  return doubled;
}

/**
 * A spanning tree of each part with the least length: nodes from the roots on, the edge towards the root (-1
 * at it), the root of each node.
 */
function spanningTree(
  nodeCount: number,
  from: readonly number[],
  to: readonly number[],
  lengthMm: readonly number[],
): { order: number[]; up: Int32Array; root: Int32Array } {
  const parts = new UnionFind(nodeCount);
  const chosen: number[][] = Array.from({ length: nodeCount }, () => []);
  const byLength = from.map((_, e) => e).sort((a, b) => lengthMm[a] - lengthMm[b]);
  for (const e of byLength) {
    if (parts.join(from[e], to[e])) {
      chosen[from[e]].push(e);
      chosen[to[e]].push(e);
    }
  }
  const up = new Int32Array(nodeCount).fill(-1);
  const root = new Int32Array(nodeCount).fill(-1);
  const order: number[] = [];
  for (let start = 0; start < nodeCount; start++) {
    if (root[start] >= 0) {
      continue;
    }
    root[start] = start;
    order.push(start);
    for (let i = order.length - 1; i < order.length; i++) {
      const v = order[i];
      for (const e of chosen[v]) {
        const w = from[e] === v ? to[e] : from[e];
        if (root[w] < 0) {
          root[w] = start;
          up[w] = e;
          order.push(w);
        }
      }
    }
  }
  return { order, up, root };
}
