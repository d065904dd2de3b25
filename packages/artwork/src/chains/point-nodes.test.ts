import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CellHash, pointNodes } from './point-nodes.ts';

test('points within the distance of a node’s first point share it, that distance included', () => {
  const nodes = (...coords: number[]) => Array.from(pointNodes(Float64Array.from(coords), 1).node);
  expect(nodes(0, 0, 1, 0, 0, -1, 3, 0)).toEqual([0, 0, 0, 1]);
  expect(nodes(0, 0, 1.001, 0, 0, 0.9)).toEqual([0, 1, 0]);
  // each is near the one before, but not near the first
  expect(nodes(0, 0, 0.8, 0, 1.6, 0)).toEqual([0, 0, 1]);
  expect(Array.from(pointNodes(Float64Array.of(5, 5, 0, 0, 5, 5), 1).first)).toEqual([0, 1]);
});

const coordinate = fc.double({ min: -20, max: 20, noNaN: true });

test('a hash of cells shows everything within the distance, and nothing twice', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(coordinate, coordinate), { maxLength: 40 }),
      fc.tuple(coordinate, coordinate),
      (points, [x, y]) => {
        // far fewer slots than cells, so that several cells fall into one
        const cells = new CellHash(1, 2);
        points.forEach(([px, py], k) => {
          cells.add(px, py, k);
        });
        const seen: number[] = [];
        cells.near(x, y, (k) => {
          seen.push(k);
          return false;
        });
        expect(new Set(seen).size).toBe(seen.length);
        const within = points.flatMap(([px, py], k) => (Math.hypot(px - x, py - y) <= 2 ? [k] : []));
        expect(seen).toEqual(expect.arrayContaining(within));
      },
    ),
  );
});
