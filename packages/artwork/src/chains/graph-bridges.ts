import type { ChainGraph } from './chain-graph.ts';
import type { Stars } from './trace-rings.ts';

/**
 * Numbers of the lines that are the only link between two parts of a graph, and so belong to no outline.
 *
 * Depth-first search with low points, without recursion; O(lines).
 *
 * @see Tarjan 1974, "A note on finding the bridges of a graph" (from memory)
 */
export function bridges(graph: ChainGraph, stars: Stars, alive: Uint8Array): number[] {
  const { node, nodeCount } = graph;
  const order = new Int32Array(nodeCount).fill(-1);
  const low = new Int32Array(nodeCount);
  const cursor = stars.start.slice();
  const found: number[] = [];
  let count = 0;
  for (let root = 0; root < nodeCount; root++) {
    if (order[root] !== -1) {
      continue;
    }
    // each step: a node and the half-edge by which it was entered (leaving its parent)
    const path: { v: number; by: number }[] = [{ v: root, by: -1 }];
    order[root] = low[root] = count++;
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const { v, by } = top;
      const k = cursor[v];
      if (k < stars.start[v + 1]) {
        cursor[v] = k + 1;
        const h = stars.list[k];
        const w = node[h ^ 1];
        if (alive[h >> 1] === 0 || h === (by ^ 1)) {
          continue;
        }
        if (order[w] === -1) {
          order[w] = low[w] = count++;
          path.push({ v: w, by: h });
        } else {
          low[v] = Math.min(low[v], order[w]);
        }
        continue;
      }
      path.pop();
      const parent = path.at(-1)?.v;
      if (parent !== undefined) {
        low[parent] = Math.min(low[parent], low[v]);
        if (low[v] > order[parent]) {
          found.push(by >> 1);
        }
      }
    }
  }
  return found;
}
