import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { UnionFind } from './union-find.ts';

test('items are in one set exactly if joins lead from one to the other, and the least of them names it', () => {
  const item = fc.integer({ min: 0, max: 19 });
  fc.assert(
    fc.property(fc.array(fc.tuple(item, item), { maxLength: 30 }), (joins) => {
      const sets = new UnionFind(19);
      expect(sets.add()).toBe(19);
      // by definition: names spread along the joins until nothing changes
      const name = Array.from({ length: 20 }, (_, k) => k);
      joins.forEach(([a, b], k) => {
        const wereApart = !reaches(joins.slice(0, k), a, b);
        expect(sets.join(a, b)).toBe(wereApart);
      });
      for (let changed = true; changed; ) {
        changed = false;
        for (const [a, b] of joins) {
          const least = Math.min(name[a]!, name[b]!);
          changed ||= name[a] !== least || name[b] !== least;
          name[a] = least;
          name[b] = least;
        }
      }
      expect(name.map((_, k) => sets.find(k))).toEqual(name);
    }),
  );
});

function reaches(joins: readonly (readonly [number, number])[], a: number, b: number): boolean {
  const seen = new Set([a]);
  for (let size = 0; size !== seen.size; ) {
    size = seen.size;
    for (const [p, q] of joins) {
      if (seen.has(p) || seen.has(q)) {
        seen.add(p).add(q);
      }
    }
  }
  return seen.has(b);
}
