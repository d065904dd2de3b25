import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eulerTrails } from './euler-trails.ts';

const graphs = fc.integer({ min: 1, max: 8 }).chain((nodes) =>
  fc.tuple(
    fc.constant(nodes),
    fc.array(fc.tuple(fc.integer({ min: 0, max: nodes - 1 }), fc.integer({ min: 0, max: nodes - 1 })), {
      maxLength: 20,
    }),
  ),
);

/** Number of parts with edges, and half the number of odd nodes of those that have some. */
function fewestTrails(nodes: number, edges: readonly (readonly [number, number])[]): number {
  const part = Array.from({ length: nodes }, (_, v) => v);
  for (const [a, b] of edges) {
    const [from, to] = [part[a], part[b]];
    part.forEach((p, v) => {
      part[v] = p === from ? (to as number) : p;
    });
  }
  const degree = new Map<number, number>();
  for (const v of edges.flat()) {
    degree.set(v, (degree.get(v) ?? 0) + 1);
  }
  const odd = new Map<number, number>();
  for (const [v, d] of degree) {
    const p = part[v] as number;
    odd.set(p, (odd.get(p) ?? 0) + (d % 2));
  }
  return [...odd.values()].reduce((sum, count) => sum + Math.max(1, count / 2), 0);
}

test('every edge is walked once, each step starts where the one before ended, in as few trails as there can be', () => {
  fc.assert(
    fc.property(graphs, ([nodes, edges]) => {
      const from = edges.map(([a]) => a);
      const to = edges.map(([, b]) => b);
      const trails = eulerTrails(nodes, from, to);
      expect(
        trails
          .flat()
          .map((step) => step >> 1)
          .sort((a, b) => a - b),
      ).toEqual(edges.map((_, e) => e));
      for (const trail of trails) {
        for (let k = 1; k < trail.length; k++) {
          const before = trail[k - 1] as number;
          const after = trail[k] as number;
          const end = (before & 1) === 0 ? to[before >> 1] : from[before >> 1];
          expect((after & 1) === 0 ? from[after >> 1] : to[after >> 1]).toBe(end);
        }
      }
      expect(trails.length).toBe(fewestTrails(nodes, edges));
    }),
  );
});

test('a graph without edges has no trails', () => {
  expect(eulerTrails(3, [], [])).toEqual([]);
});
