import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { type Boundary, boundaryOf } from './boundary.ts';
import { findBottlenecks } from './find-bottlenecks.ts';
import { obbTree } from './obb-tree.ts';

/** Numbers in 0 … 1 that depend on the seed alone (mulberry32, from memory). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A ring around a middle with radii by angle; run backwards for a hole. */
function around(corners: number, radius: (i: number) => number, cx = 0, cy = 0, isHole = false): number[] {
  const points = Array.from({ length: corners }, (_, i) => {
    const turn = (2 * Math.PI * i) / corners;
    return [cx + radius(i) * Math.cos(turn), cy + radius(i) * Math.sin(turn)];
  });
  return (isHole ? points.reverse() : points).flat();
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

const seeds = Array.from({ length: 25 }, (_, k) => k + 1);

test('all bottlenecks are found and no others, on spiky stars with holes', () => {
  for (const seed of seeds) {
    const random = randomFrom(seed);
    const outer = around(30 + Math.floor(60 * random()), () => 7 + 8 * random());
    const holes = [
      [3, 3.1],
      [-3.2, 2.9],
      [0.3, -3],
    ].map(([cx, cy]) => around(12, () => 0.3 + 1.6 * random(), cx, cy, true));
    const b = boundaryOf(packRings([outer, ...holes]));
    const bottlenecks = bottlenecksFound(b);
    expect(bottlenecks, `seed ${seed}`).toEqual(bottlenecksByDefinition(b));
    expect(bottlenecks.length, `seed ${seed}: each hole hangs on one at least`).toBeGreaterThanOrEqual(3);
  }
});

test('all bottlenecks are found where most of the boundary is seen from most points', () => {
  for (const seed of seeds) {
    const random = randomFrom(seed);
    const spikes = boundaryOf(packRings([around(120, () => 1 + 9 * random())]));
    expect(bottlenecksFound(spikes), `spikes, seed ${seed}`).toEqual(bottlenecksByDefinition(spikes));
    const jitter = boundaryOf(packRings([around(150, () => 10 * (1 + 1e-3 * random()))]));
    expect(bottlenecksFound(jitter), `jitter, seed ${seed}`).toEqual(bottlenecksByDefinition(jitter));
  }
});

test('all bottlenecks are found on flattened curves, where cones of normals are thin and walls run side by side', () => {
  for (const seed of seeds.slice(0, 8)) {
    const random = randomFrom(seed);
    const waves = 2 + Math.floor(5 * random());
    const wavy = (middle: number, height: number, shift: number, corners: number) => (i: number) =>
      middle + height * Math.sin((2 * Math.PI * waves * i) / corners + shift);
    const b = boundaryOf(
      packRings([
        around(240, wavy(10, 0.8, 6 * random(), 240)),
        around(170, wavy(7, 0.6, 6 * random(), 170), 0.3 * random(), 0.3 * random(), true),
      ]),
    );
    const bottlenecks = bottlenecksFound(b);
    expect(bottlenecks, `seed ${seed}`).toEqual(bottlenecksByDefinition(b));
    expect(bottlenecks.length, `seed ${seed}: the hole hangs on one at least`).toBeGreaterThanOrEqual(1);
  }
});

test('all bottlenecks are found where thin cones look across everything, so that each has to go alone', () => {
  for (const seed of seeds.slice(0, 4)) {
    const random = randomFrom(seed);
    let coast = [10, 0, 0, 10, -10, 0, 0, -10];
    while (coast.length < 1000) {
      coast = Array.from({ length: coast.length / 2 }, (_, i) => {
        const [ax, ay] = [coast[2 * i], coast[2 * i + 1]];
        const j = (2 * i + 2) % coast.length;
        const push = (random() - 0.5) * 0.35;
        const dx = coast[j] - ax;
        const dy = coast[j + 1] - ay;
        return [ax, ay, ax + dx / 2 - dy * push, ay + dy / 2 + dx * push];
      }).flat();
    }
    const b = boundaryOf(packRings([coast, around(60, () => 0.5 + 2 * random(), 0.2, 0.1, true)]));
    const bottlenecks = bottlenecksFound(b);
    expect(bottlenecks, `seed ${seed}`).toEqual(bottlenecksByDefinition(b));
    expect(bottlenecks.length, `seed ${seed}: the hole hangs on one at least`).toBeGreaterThanOrEqual(1);
  }
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
