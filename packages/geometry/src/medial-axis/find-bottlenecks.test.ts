import { packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coastRing, share, starRing, waveRing } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { type Boundary, boundaryOf } from './boundary.ts';
import { findBottlenecks } from './find-bottlenecks.ts';
import { obbTree } from './obb-tree.ts';

/** A ring around a middle with radii by angle, from some angle on. */
function around(corners: number, radius: (i: number) => number, from = 0): number[] {
  return Array.from({ length: corners }, (_, i) => {
    const turn = from + (2 * Math.PI * i) / corners;
    return [radius(i) * Math.cos(turn), radius(i) * Math.sin(turn)];
  }).flat();
}

/** Distance from a point to edge e, and the direction to its nearest point. */
function toEdge(b: Boundary, e: number, px: number, py: number): { d: number; dx: number; dy: number } {
  const j = b.next[e];
  const ex = b.x[j] - b.x[e];
  const ey = b.y[j] - b.y[e];
  const t = Math.min(1, Math.max(0, ((px - b.x[e]) * ex + (py - b.y[e]) * ey) / (ex * ex + ey * ey)));
  const dx = b.x[e] + t * ex - px;
  const dy = b.y[e] + t * ey - py;
  return { d: Math.hypot(dx, dy), dx, dy };
}

/** Whether direction (dx, dy) leads from reflex vertex v into its cone of normals. */
function leadsIn(b: Boundary, v: number, dx: number, dy: number): boolean {
  const back = b.previous[v];
  return (
    dx * (b.x[v] - b.x[back]) + dy * (b.y[v] - b.y[back]) >= 0 &&
    dx * (b.x[b.next[v]] - b.x[v]) + dy * (b.y[b.next[v]] - b.y[v]) <= 0 &&
    (dy * b.tx[v] - dx * b.ty[v] > 0 || dy * b.tx[back] - dx * b.ty[back] > 0)
  );
}

/** Every bottleneck by trying every pair against every edge, as "vertex site". */
function bottlenecksByDefinition(b: Boundary): string[] {
  const found: string[] = [];
  const tryEnd = (v: number, site: number, px: number, py: number): void => {
    const mx = (b.x[v] + px) / 2;
    const my = (b.y[v] + py) / 2;
    const r = Math.hypot(px - b.x[v], py - b.y[v]) / 2;
    if (!leadsIn(b, v, px - b.x[v], py - b.y[v])) {
      return;
    }
    // 1e-9 of the radius is far above rounding and far below what random corners leave
    const isEmpty = Array.from({ length: b.count }, (_, e) => e).every(
      (e) => toEdge(b, e, mx, my).d > r * (1 - 1e-9),
    );
    if (isEmpty) {
      found.push(`${v} ${site}`);
    }
  };
  for (let v = 0; v < b.count; v++) {
    for (let e = 0; b.isReflex[v] !== 0 && e < b.count; e++) {
      if (b.isReflex[e] !== 0 && v < e && leadsIn(b, e, b.x[v] - b.x[e], b.y[v] - b.y[e])) {
        tryEnd(v, b.count + e, b.x[e], b.y[e]);
      }
      const { dx, dy, d } = toEdge(b, e, b.x[v], b.y[v]);
      const isInside = Math.abs(dx * b.tx[e] + dy * b.ty[e]) < 1e-9 * d;
      const isInFront = dx * b.ty[e] - dy * b.tx[e] > 0;
      if (d > 0 && isInside && isInFront) {
        tryEnd(v, e, b.x[v] + dx, b.y[v] + dy);
      }
    }
  }
  return found.sort();
}

function bottlenecksFound(b: Boundary): string[] {
  const { count, vertex, site } = findBottlenecks(b, obbTree(b));
  return Array.from({ length: count }, (_, k) => `${vertex[k]} ${site[k]}`).sort();
}

const reversed = (ring: readonly number[]): number[] =>
  Array.from({ length: ring.length / 2 }, (_, i) =>
    ring.slice(ring.length - 2 * i - 2, ring.length - 2 * i),
  ).flat();

/**
 * The bottlenecks of rings, the first outer and the rest holes, are those of the definition; gives how many
 * there are.
 */
function expectThoseOfDefinition([outer, ...holes]: readonly number[][]): number {
  const b = boundaryOf(packRings([outer, ...holes.map(reversed)]));
  const bottlenecks = bottlenecksFound(b);
  expect(bottlenecks).toEqual(bottlenecksByDefinition(b));
  return bottlenecks.length;
}

test('all bottlenecks are found and no others, on spiky stars with holes', () => {
  fc.assert(
    fc.property(
      starRing([30, 89], [7, 15]),
      starRing([6, 12], [0.3, 1.9], [3, 3.1]),
      starRing([6, 12], [0.3, 1.9], [-3.2, 2.9]),
      starRing([6, 12], [0.3, 1.9], [0.3, -3]),
      (...rings) => {
        expect(expectThoseOfDefinition(rings), 'each hole hangs on one at least').toBeGreaterThanOrEqual(3);
      },
    ),
    cases(25),
  );
});

test('all bottlenecks are found where most of the boundary is seen from most points', () => {
  fc.assert(
    fc.property(starRing([60, 120], [1, 10]), starRing([60, 150], [10, 10.01]), (spikes, jitter) => {
      expectThoseOfDefinition([spikes]);
      expectThoseOfDefinition([jitter]);
    }),
    cases(15),
  );
});

test('all bottlenecks are found on flattened curves, where cones of normals are thin and walls run side by side', () => {
  fc.assert(
    fc.property(
      waveRing([200, 240], 10, 0.8),
      waveRing([150, 170], 7, 0.6),
      share,
      share,
      (outer, inner, x, y) => {
        const hole = inner.map((v, i) => v + 0.3 * (i % 2 === 0 ? x : y));
        expect(
          expectThoseOfDefinition([outer, hole]),
          'the hole hangs on one at least',
        ).toBeGreaterThanOrEqual(1);
      },
    ),
    cases(8),
  );
});

test('all bottlenecks are found where thin cones look across everything, so that each has to go alone', () => {
  fc.assert(
    fc.property(coastRing(8, 0.45), starRing([30, 60], [0.5, 2.5], [0.2, 0.1]), (coast, hole) => {
      expect(expectThoseOfDefinition([coast, hole]), 'the hole hangs on one at least').toBeGreaterThanOrEqual(
        1,
      );
    }),
    cases(4),
  );
});

test('all bottlenecks are found at a coarse hole that a very fine wall surrounds at one distance', () => {
  // each corner of the hole is nearest to the middle of an edge there, and looks at hundreds that are hardly farther
  const [corners, edges] = [24, 125];
  const fine = around(edges * corners, () => 10);
  const hole = around(corners, () => 3, Math.PI / (edges * corners));
  const found = expectThoseOfDefinition([fine, hole]);
  expect([found > 0, found % corners]).toEqual([true, 0]);
});

test('teeth that all point at one place have no bottlenecks, though one disc touches them all', () => {
  const b = boundaryOf(packRings([around(400, (i) => (i % 2 === 0 ? 11 : 10))]));
  expect(bottlenecksFound(b)).toEqual([]);
});

test('a straight slot has one bottleneck at each of its ends', () => {
  const b = boundaryOf(
    packRings([[0, 0, 4, 0, 4, 1, 8, 1, 8, 0, 12, 0, 12, 4, 8, 4, 8, 3, 4, 3, 4, 4, 0, 4]]),
  );
  const { count, vertex } = findBottlenecks(b, obbTree(b));
  expect(count).toBeGreaterThanOrEqual(2);
  for (let k = 0; k < count; k++) {
    expect([2, 3, 8, 9]).toContain(vertex[k]);
  }
});
