import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coveringTrails } from './covering-trails.ts';

const graphs = fc.integer({ min: 2, max: 9 }).chain((nodes) => {
  const node = fc.integer({ min: 0, max: nodes - 1 });
  const length = fc.integer({ min: 1, max: 50 });
  return fc.tuple(
    fc.constant(nodes),
    fc.array(fc.tuple(node, node, length), { minLength: 1, maxLength: 20 }),
    fc.integer({ min: 0, max: 100 }),
  );
});

test('every edge is walked once or twice, in connected trails', () => {
  fc.assert(
    fc.property(graphs, ([nodes, edges, limit]) => {
      const from = edges.map(([a]) => a);
      const to = edges.map(([, b]) => b);
      const trails = coveringTrails(
        nodes,
        from,
        to,
        edges.map(([, , length]) => length),
        limit,
      );
      const times = new Int32Array(edges.length);
      for (const trail of trails) {
        let at = -1;
        for (const step of trail) {
          const e = step >> 1;
          const [a, b] = (step & 1) === 0 ? [from[e], to[e]] : [to[e], from[e]];
          expect(at === -1 || at === a).toBe(true);
          at = b as number;
          times[e]++;
        }
      }
      expect(times.every((count) => count === 1 || count === 2)).toBe(true);
    }),
  );
});

test('a star of four rays is one trail where turning back is cheap, two where it is not', () => {
  const from = [0, 0, 0, 0];
  const to = [1, 2, 3, 4];
  const lengths = [5, 6, 7, 8];
  expect(coveringTrails(5, from, to, lengths, 100).length).toBe(1);
  expect(coveringTrails(5, from, to, lengths, 10).length).toBe(2);
  // the two longest rays are its ends, the other two are walked there and back
  const walked = coveringTrails(5, from, to, lengths, 100)[0] ?? [];
  expect(walked.reduce((sum, step) => sum + (lengths[step >> 1] as number), 0)).toBe(8 + 7 + 2 * (6 + 5));
});

test('a curve with one tail of any length is one trail', () => {
  expect(coveringTrails(4, [0, 1, 2, 0], [1, 2, 0, 3], [1, 1, 1, 1000], 10).length).toBe(1);
});
