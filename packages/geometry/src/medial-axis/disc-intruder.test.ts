import { packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { share, starRing } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { type Boundary, boundaryOf } from './boundary.ts';
import { DiscIntruder } from './disc-intruder.ts';
import { obbTree } from './obb-tree.ts';

/** Distance from a point to edge e. */
function toEdge(b: Boundary, e: number, px: number, py: number): number {
  const along = (px - b.x[e]) * b.tx[e] + (py - b.y[e]) * b.ty[e];
  const t = Math.min(Math.max(along, 0), b.length[e]);
  return Math.hypot(b.x[e] + t * b.tx[e] - px, b.y[e] + t * b.ty[e] - py);
}

test('a disc clearly larger than its clearance has an intruder, one that is smaller has none; edges of a vertex do not count', () => {
  fc.assert(
    fc.property(starRing([20, 40], [1, 10]), share, share, share, (ring, atX, atY, at) => {
      const b = boundaryOf(packRings([ring]));
      const intruder = new DiscIntruder(b, obbTree(b), Infinity);
      const v = Math.floor(at * (b.count - 1));
      const [mx, my] = [(atX - 0.5) * b.extent, (atY - 0.5) * b.extent];
      const others = Array.from(b.x.keys()).filter((e) => e !== v && e !== b.previous[v]);
      const clearance = Math.min(...others.map((e) => toEdge(b, e, mx, my)));
      expect(intruder.find(mx, my, (0.999 * clearance) ** 2, v)).toBe(false);
      expect(intruder.find(mx, my, 2 * clearance ** 2 + 1e-9, v)).toBe(true);
      expect(others).toContain(intruder.edge);
      expect(Math.hypot(intruder.x - mx, intruder.y - my)).toBeLessThan(Math.sqrt(2 * clearance ** 2 + 2e-9));
      expect(toEdge(b, intruder.edge, intruder.x, intruder.y)).toBeLessThan(1e-9 * b.extent);
    }),
    cases(200),
  );
});
