import { type CleanRegion, packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';

/** A ring of even angles whose radius swings. */
function ring(corners: number, radius: number, swing: number, waves: number): number[] {
  return Array.from({ length: corners }, (_, i) => {
    const turn = (2 * Math.PI * i) / corners;
    const r = radius + swing * Math.cos(waves * turn);
    return [r * Math.cos(turn), r * Math.sin(turn)];
  }).flat();
}

function reversed(ring: number[]): number[] {
  return Array.from({ length: ring.length / 2 }, (_, k) =>
    ring.slice(-2 * k - 2, ring.length - 2 * k),
  ).flat();
}

// two swinging rings, one a hole: lines, parabolas, pairs of points and bottlenecks
const region = packRings([ring(60, 20, 3, 7), reversed(ring(40, 9, 4, 5))]) as CleanRegion;
const axis = medialAxis(region);
const edge = new AxisEdge(axis);
const long = Array.from(axis.edgeFrom, (_, e) => e).filter((e) => {
  edge.load(e);
  return edge.kind !== 'secondary' && Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0) > 1e-6;
});
const SHARES = [0, 0.1, 0.35, 0.5, 0.8, 1];

/** Distance of a point, in the frame of the axis, to the nearest edge of the region: by all edges. */
function distance(x: number, y: number): number {
  const { coords, ringEnds } = region;
  const [px, py] = [x + axis.boundary.originX, y + axis.boundary.originY];
  let least = Number.POSITIVE_INFINITY;
  let start = 0;
  for (const end of ringEnds) {
    for (let i = start; i < end; i++) {
      const j = i + 1 === end ? start : i + 1;
      const [ax, ay, bx, by] = [coords[2 * i]!, coords[2 * i + 1]!, coords[2 * j]!, coords[2 * j + 1]!];
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
      least = Math.min(least, Math.hypot(px - ax - t * dx, py - ay - t * dy));
    }
    start = end;
  }
  return least;
}

test('the shape has edges of every kind', () => {
  const kinds = new Set(
    long.map((e) => {
      edge.load(e);
      return edge.kind;
    }),
  );
  expect([...kinds].sort()).toEqual(['segment-vertex', 'segments', 'vertices']);
});

test('the clearance at every share is the distance to the nearest edge of the region', () => {
  for (const e of long) {
    edge.load(e);
    for (const share of SHARES) {
      edge.atShare(share);
      expect(edge.clearance).toBeCloseTo(distance(edge.x, edge.y), 9);
    }
  }
});

test('so it is whichever point the ring begins with, one that is a site of its own, too', () => {
  const angle = [8, 8, 8, 20, 0, 20, 0, 0, 20, 0, 20, 8];
  for (let k = 0; k < angle.length; k += 2) {
    const turned = packRings([[...angle.slice(k), ...angle.slice(0, k)]]) as CleanRegion;
    const whole = medialAxis(turned);
    const curved = new AxisEdge(whole);
    const found: number[] = [];
    for (let e = 0; e < whole.edgeFrom.length; e++) {
      curved.load(e);
      if (curved.kind === 'segment-vertex') {
        curved.atShare(0.5);
        const [x, y] = [curved.x + whole.boundary.originX, curved.y + whole.boundary.originY];
        // from one of the outer walls, and from the inner corner
        expect(Math.min(x, y)).toBeCloseTo(curved.clearance, 9);
        expect(Math.hypot(x - 8, y - 8)).toBeCloseTo(curved.clearance, 9);
        found.push(e);
      }
    }
    expect(found.length).toBeGreaterThanOrEqual(2);
  }
});

test('the share of a clearance, and the point at it, lead back to the share', () => {
  for (const e of long) {
    edge.load(e);
    const isLevel = edge.r1 - edge.r0 < 1e-6;
    for (const share of isLevel ? [] : SHARES) {
      edge.atShare(share);
      const { clearance, x, y } = edge;
      edge.atShare(edge.shareOf(clearance));
      expect(edge.clearance).toBeCloseTo(clearance, 9);
      edge.at(clearance);
      expect(edge.x).toBeCloseTo(x, 6);
      expect(edge.y).toBeCloseTo(y, 6);
    }
    expect(edge.shareOf(edge.r0 - 1)).toBe(isLevel && edge.r0 - 1 >= edge.r1 ? 1 : 0);
    expect(edge.shareOf(edge.r1)).toBe(1);
  }
});

test('lengths and what the clearance sweeps are those of the points between, and slopes their quotients', () => {
  const parts = 200;
  for (const e of long) {
    edge.load(e);
    let sum = 0;
    let swept = 0;
    edge.atShare(0.2);
    let before = [edge.x, edge.y, edge.clearance] as const;
    const slopes: number[] = [];
    for (let k = 1; k <= parts; k++) {
      edge.atShare(0.2 + (0.7 * k) / parts);
      const step = Math.hypot(edge.x - before[0], edge.y - before[1]);
      sum += step;
      swept += (step * (edge.clearance + before[2])) / 2;
      slopes.push((edge.clearance - before[2]) / step);
      before = [edge.x, edge.y, edge.clearance];
    }
    // chords of 200 parts fall short by less than 1e-5 of an arc that turns by less than a half turn
    expect(edge.lengthBetween(0.2, 0.9) / sum - 1).toBeLessThan(2e-5);
    expect(edge.lengthBetween(0.2, 0.9) / sum - 1).toBeGreaterThan(-1e-9);
    expect(edge.sweptBetween(0.2, 0.9) / swept).toBeCloseTo(1, 4);
    const at = (k: number) => 0.2 + (0.7 * (k + 0.5)) / parts;
    for (const k of [0, 99, 199]) {
      expect(edge.slopeAt(at(k))).toBeCloseTo(slopes[k]!, 3);
    }
  }
});
