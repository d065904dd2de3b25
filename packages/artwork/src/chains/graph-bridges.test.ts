import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ChainGraph, chainGraph } from './chain-graph.ts';
import { bridges } from './graph-bridges.ts';
import { starsOf } from './trace-rings.ts';

/** How many parts hang together by those lines that are in use. */
function partCount({ node, nodeCount }: ChainGraph, alive: Uint8Array): number {
  const parent = Array.from({ length: nodeCount }, (_, v) => v);
  const root = (v: number): number => (parent[v] === v ? v : root(parent[v] as number));
  alive.forEach((isAlive, line) => {
    if (isAlive === 1) {
      parent[root(node[2 * line] as number)] = root(node[2 * line + 1] as number);
    }
  });
  return parent.filter((v, k) => v === k).length;
}

const place = fc.integer({ min: 0, max: 11 });
/** Lines between twelve places, so that many meet; bent ones, so that two places can be joined twice. */
const lines = fc.array(fc.tuple(place, place, fc.integer({ min: 1, max: 9 })), { maxLength: 24 });

test('a line is a bridge where without it more parts are left', () => {
  fc.assert(
    fc.property(lines, fc.infiniteStream(fc.integer({ min: 0, max: 5 })), (drawn, drop) => {
      const at = (k: number): [number, number] => [20 * (k % 4), 20 * Math.floor(k / 4)];
      const graph = chainGraph(
        drawn.map(([a, b, bend], k) => [...at(a), 100 + bend, 10 * k + bend, ...at(b)]),
        drawn.map((_, k) => k),
        0.001,
      );
      const alive = Uint8Array.from(graph.alive, (isAlive) => (drop.next().value === 0 ? 0 : isAlive));
      const before = partCount(graph, alive);
      const expected = drawn.flatMap((_, line) => {
        const without = alive.with(line, 0);
        return alive[line] === 1 && partCount(graph, without) > before ? [line] : [];
      });
      expect(bridges(graph, starsOf(graph, alive), alive).toSorted((a, b) => a - b)).toEqual(expected);
    }),
  );
});
