import { inGrains, pollStep, UnionFind } from '@pourproof/plane';
import { eulerTrails } from '../euler-trails.ts';

/**
 * Trails that walk every edge of a graph at least once: an approximation to route inspection (the Chinese
 * postman problem). An edge is walked twice where that saves a retract: odd nodes are paired along a minimum
 * spanning tree and the tree paths between them are walked again, save those longer than `limitMm` and the
 * longest of each part, where a trail starts and ends for free. Steps are those of `eulerTrails`; a doubled
 * edge occurs twice. O(n log n).
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

/** A path from an odd node up the tree, as a linked list of edges. */
interface TreePath {
  readonly length: number;
  readonly edges: Chain | undefined;
}

interface Chain {
  readonly edge: number;
  readonly rest: Chain | undefined;
}

interface Pairing {
  readonly length: number;
  readonly paths: readonly TreePath[];
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
    pollStep();
    isOdd[from[e]] ^= 1;
    isOdd[to[e]] ^= 1;
  }
  const waiting = new Array<TreePath[] | undefined>(nodeCount);
  const pairings = new Map<number, Pairing[]>();
  // leaves first: each node pairs the paths that end at it, and passes one on to its parent if their number
  // is odd
  for (let i = order.length - 1; i >= 0; i--) {
    pollStep();
    const v = order[i];
    const paths = waiting[v] ?? [];
    if (isOdd[v] !== 0) {
      paths.push({ length: 0, edges: undefined });
    }
    if (paths.length > 1) {
      paths.sort((a, b) => inGrains(b.length) - inGrains(a.length));
    }
    const parent = up[v];
    const sent = paths.length % 2 === 1 ? paths.shift() : undefined;
    for (let k = 0; k < paths.length; k += 2) {
      pollStep();
      const list = pairings.get(root[v]) ?? [];
      pairings.set(root[v], list);
      list.push({ length: paths[k].length + paths[k + 1].length, paths: [paths[k], paths[k + 1]] });
    }
    if (sent !== undefined && parent >= 0) {
      const above = from[parent] === v ? to[parent] : from[parent];
      const path = { length: sent.length + lengthMm[parent], edges: { edge: parent, rest: sent.edges } };
      const list = waiting[above];
      if (list === undefined) {
        waiting[above] = [path];
      } else {
        list.push(path);
      }
    }
  }
  const doubled: number[] = [];
  for (const list of pairings.values()) {
    list.sort((a, b) => inGrains(b.length) - inGrains(a.length));
    for (const { length, paths } of list.slice(1)) {
      pollStep();
      for (const path of length <= limitMm ? paths : []) {
        for (let chain = path.edges; chain !== undefined; chain = chain.rest) {
          doubled.push(chain.edge);
        }
      }
    }
  }
  return doubled;
}

/**
 * A minimum spanning tree of each part (Kruskal): nodes from the roots on, the edge towards the root (-1 at
 * it), and the root of each node.
 */
function spanningTree(
  nodeCount: number,
  from: readonly number[],
  to: readonly number[],
  lengthMm: readonly number[],
): { order: number[]; up: Int32Array; root: Int32Array } {
  const parts = new UnionFind(nodeCount);
  const grains = Float64Array.from(lengthMm, inGrains);
  const byLength = Uint32Array.from(grains.keys()).sort((a, b) => {
    pollStep();
    return grains[a] - grains[b];
  });
  // those of node v are `chosen[first[v]]` up to before `chosen[first[v + 1]]`, in the order in which they were chosen
  const first = new Uint32Array(nodeCount + 1);
  const joining = byLength.filter((e) => parts.join(from[e], to[e]));
  for (const e of joining) {
    pollStep();
    first[from[e] + 1]++;
    first[to[e] + 1]++;
  }
  for (let v = 0; v < nodeCount; v++) {
    first[v + 1] += first[v];
  }
  const next = first.slice();
  const chosen = new Uint32Array(2 * joining.length);
  for (const e of joining) {
    chosen[next[from[e]]++] = e;
    chosen[next[to[e]]++] = e;
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
      for (let at = first[v]; at < first[v + 1]; at++) {
        pollStep();
        const e = chosen[at];
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
