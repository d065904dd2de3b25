import { medialAxis } from '@pourproof/geometry';
import { type CleanRegion, packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FreeMoves } from './free-moves.ts';

/** A room of 20 × 10 mm around the origin with a pillar of 2 × 2 mm in its middle. */
const room = packRings([
  [-10, -5, 10, -5, 10, 5, -10, 5],
  [-1, -1, -1, 1, 1, 1, 1, -1],
]) as CleanRegion;
const axis = medialAxis(room);

/** Distance from a point of the room to its walls and the pillar. */
function clearance(x: number, y: number): number {
  const walls = Math.min(10 - Math.abs(x), 5 - Math.abs(y));
  return Math.min(walls, Math.hypot(Math.max(0, Math.abs(x) - 1), Math.max(0, Math.abs(y) - 1)));
}

test('a move is free exactly if all its points are as far from the edge as they should be', () => {
  const place = fc.tuple(
    fc.double({ min: -9.9, max: 9.9, noNaN: true }),
    fc.double({ min: -4.9, max: 4.9, noNaN: true }),
  );
  const least = fc.double({ min: 0.1, max: 2, noNaN: true });
  fc.assert(
    fc.property(place, place, least, ([ax, ay], [bx, by], mm) => {
      fc.pre(clearance(ax, ay) > 0 && clearance(bx, by) > 0);
      const steps = 2000;
      let found = Infinity;
      for (let k = 0; k <= steps; k++) {
        found = Math.min(found, clearance(ax + (k / steps) * (bx - ax), ay + (k / steps) * (by - ay)));
      }
      const isFree = new FreeMoves(axis, mm).isFree(ax, ay, bx, by);
      // between two samples the clearance may be half a step less
      const slack = Math.hypot(bx - ax, by - ay) / steps;
      if (found >= mm + slack) {
        expect(isFree).toBe(true);
      }
      if (found < mm * (1 - 1e-6)) {
        expect(isFree).toBe(false);
      }
    }),
  );
});

test('a move along a wall at exactly the distance is free, one through the pillar is not', () => {
  const moves = new FreeMoves(axis, 1.5);
  expect(moves.isFree(-8.5, 3.5, 8.5, 3.5)).toBe(true);
  expect(moves.isFree(-8.5, 3.6, 8.5, 3.5)).toBe(false);
  expect(moves.isFree(-8, 0, 8, 0)).toBe(false);
});
