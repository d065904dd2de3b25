import { type FillRule, packRings, type Region, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { cleanRegionFaults } from '../../../../tests/support/oracles/clean-region-faults.ts';
import { resolveRegions } from './resolve-regions.ts';
import { holeCount, outerRingCount } from './ring-counts.ts';

function shape(rule: FillRule, ...rings: number[][]): Region {
  return { ...packRings(rings), fillRule: rule };
}

function square(x: number, y: number, side: number): number[] {
  return [x, y, x + side, y, x + side, y + side, x, y + side];
}

function reversed(ring: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) {
    out.push(ring[i] as number, ring[i + 1] as number);
  }
  return out;
}

describe('resolveRegions', () => {
  test('two overlapping squares become one outline with two crossings', () => {
    const resolved = resolveRegions([shape('nonzero', square(0, 0, 10)), shape('nonzero', square(5, 5, 10))]);
    expect(signedArea(resolved.region)).toBe(175);
    expect(outerRingCount(resolved.region)).toBe(1);
    expect(resolved.crossings).toEqual([
      { atMm: [5, 10], kind: 'between', regions: [0, 1] },
      { atMm: [10, 5], kind: 'between', regions: [0, 1] },
    ]);
    expect(cleanRegionFaults(resolved.region)).toEqual([]);
  });

  test('shapes that touch nothing keep their points bit for bit, turned where needed', () => {
    const outer = [0.1, 0.2, 10.3, 0.7, 9.9, 8.12345678901, 0.3, 9.1];
    const hole = [3.1, 3.2, 4.3, 3.7, 3.9, 4.1];
    const resolved = resolveRegions([shape('evenodd', reversed(outer), hole)]);
    expect(resolved.largestMoveMm).toBe(0);
    expect(outerRingCount(resolved.region)).toBe(1);
    expect(holeCount(resolved.region)).toBe(1);
    expect([...resolved.region.coords].sort()).toEqual([...outer, ...hole].sort());
    expect(cleanRegionFaults(resolved.region)).toEqual([]);
  });

  test('what crosses upright and level edges leaves them exactly upright and level', () => {
    const edges = [0.1, 10.3];
    const box = shape('nonzero', [0.1, 0.1, 10.3, 0.1, 10.3, 10.3, 0.1, 10.3]);
    for (let k = 0; k < 40; k++) {
      // slender triangles in all directions from the middle, out of the box
      const [dx, dy] = [Math.cos(0.16 * k + 0.05), Math.sin(0.16 * k + 0.05)];
      const ray = [
        5.2 - 0.3 * dy,
        5.2 + 0.3 * dx,
        5.2 + 0.3 * dy,
        5.2 - 0.3 * dx,
        5.2 + 20 * dx,
        5.2 + 20 * dy,
      ];
      const { coords } = resolveRegions([box, shape('nonzero', ray)]).region;
      const onEdges = Array.from(coords).filter((v) => edges.some((edge) => Math.abs(v - edge) < 1e-6));
      // three corners on two edges each, and two crossings at least
      expect(onEdges.length).toBeGreaterThanOrEqual(8);
      expect(onEdges.filter((v) => !edges.includes(v))).toEqual([]);
    }
  });

  test('the fill rule decides about a ring in a ring turning the same way', () => {
    const rings = [square(0, 0, 10), square(2, 2, 4)];
    expect(signedArea(resolveRegions([shape('nonzero', ...rings)]).region)).toBe(100);
    expect(signedArea(resolveRegions([shape('evenodd', ...rings)]).region)).toBe(84);
    expect(signedArea(resolveRegions([shape('nonzero', rings[0]!, reversed(rings[1]!))]).region)).toBe(84);
  });

  test('a shape inside the hole of another is kept, one under its solid part adds nothing', () => {
    const frame = shape('evenodd', square(0, 0, 10), square(1, 1, 8));
    const resolved = resolveRegions([
      frame,
      shape('nonzero', square(4, 4, 2)),
      shape('nonzero', square(0.25, 0.25, 0.5)),
    ]);
    expect(signedArea(resolved.region)).toBe(100 - 64 + 4);
    expect(outerRingCount(resolved.region)).toBe(2);
  });

  test('lists as many crossings as asked for and counts all', () => {
    const bars = [0, 2, 4].map((y) => shape('nonzero', [0, y, 10, y, 10, y + 1, 0, y + 1]));
    const resolved = resolveRegions([...bars, shape('nonzero', [4, -1, 5, -1, 5, 6, 4, 6])], {
      listedPlaces: 5,
    });
    expect(resolved.crossings).toHaveLength(5);
    expect(resolved.crossingCount).toBe(12);
  });

  test('a bow-tie has two parts that touch, under either rule', () => {
    for (const rule of ['nonzero', 'evenodd'] as const) {
      const resolved = resolveRegions([shape(rule, [0, 0, 10, 10, 10, 0, 0, 10])]);
      expect(signedArea(resolved.region)).toBe(50);
      expect(outerRingCount(resolved.region)).toBe(2);
      expect(resolved.crossings).toEqual([{ atMm: [5, 5], kind: 'self', regions: [0, 0] }]);
      expect(cleanRegionFaults(resolved.region)).toEqual([]);
    }
  });

  test('outlines that cross in a drawn point are counted, those that only touch or share an edge there are not', () => {
    const bowTie = shape('nonzero', [0, 0, 5, 5, 10, 10, 10, 0, 5, 5, 0, 10]);
    expect(resolveRegions([bowTie]).crossings).toEqual([{ atMm: [5, 5], kind: 'self', regions: [0, 0] }]);
    const through = [shape('nonzero', square(0, 0, 10)), shape('nonzero', [10, 4, 14, 8, 10, 8, 6, 8])];
    // its corners at (10, 4) and (10, 8) lie on the square's side, which it passes in both
    expect(resolveRegions(through).crossings.map((crossing) => crossing.atMm)).toEqual([
      [10, 4],
      [10, 8],
    ]);
    const passing = [shape('nonzero', square(0, 0, 10)), shape('nonzero', [8, -2, 12, 2, 12, -2])];
    expect(resolveRegions(passing).crossingCount).toBe(0);
    const corner = [shape('nonzero', square(0, 0, 10)), shape('nonzero', [8, 12, 12, 8, 5, 5])];
    // two sides of the triangle leave the square; the third only touches its corner
    expect(resolveRegions(corner).crossings.map((crossing) => crossing.atMm)).not.toContainEqual([10, 10]);
    expect(resolveRegions(corner).crossingCount).toBe(2);
    const touching = [
      shape('nonzero', square(0, 0, 10)),
      shape('nonzero', square(10, 10, 10)),
      shape('nonzero', square(10, 0, 10)),
    ];
    expect(resolveRegions(touching).crossingCount).toBe(0);
  });

  test('a shape drawn twice counts once and is reported, whichever way it turns', () => {
    const ring = square(0, 0, 10);
    for (const again of [ring, reversed(ring), [...ring.slice(2), ...ring.slice(0, 2)]]) {
      const resolved = resolveRegions([shape('evenodd', ring), shape('evenodd', again)]);
      expect(signedArea(resolved.region)).toBe(100);
      expect(resolved.doubled).toHaveLength(1);
      expect(resolved.doubled[0]).toMatchObject({ regions: [0, 1], areaMm2: 100 });
      expect(resolved.crossingCount).toBe(0);
    }
  });

  test('shapes that share an edge in part become one without a seam', () => {
    const resolved = resolveRegions([shape('nonzero', square(0, 0, 10)), shape('nonzero', square(10, 3, 2))]);
    expect(signedArea(resolved.region)).toBe(104);
    expect(outerRingCount(resolved.region)).toBe(1);
    expect(holeCount(resolved.region)).toBe(0);
    expect(cleanRegionFaults(resolved.region)).toEqual([]);
  });

  test('shapes that miss each other by less than the grid become one', () => {
    const resolved = resolveRegions([
      shape('nonzero', square(0, 0, 10)),
      shape('nonzero', [10 + 1e-8, 0, 20, 0, 20, 10, 10 - 1e-8, 10]),
      shape('nonzero', [2, 10 + 3e-7, 4, 10 - 3e-7, 3, 14]),
    ]);
    expect(outerRingCount(resolved.region)).toBe(1);
    expect(holeCount(resolved.region)).toBe(0);
    expect(resolved.largestMoveMm).toBeGreaterThan(0);
    expect(resolved.largestMoveMm).toBeLessThan(5e-7);
    expect(cleanRegionFaults(resolved.region)).toEqual([]);
  });

  test('a hole that touches its outline in a point joins it; squares that touch in a point stay two', () => {
    const touching = resolveRegions([shape('evenodd', square(0, 0, 10), [0, 5, 5, 3, 5, 7])]);
    expect(signedArea(touching.region)).toBe(90);
    expect(touching.region.ringEnds).toHaveLength(1);
    expect(cleanRegionFaults(touching.region)).toEqual([]);
    const two = resolveRegions([shape('nonzero', square(0, 0, 10)), shape('nonzero', square(10, 10, 10))]);
    expect(outerRingCount(two.region)).toBe(2);
    expect(cleanRegionFaults(two.region)).toEqual([]);
  });

  test('lines without area leave no trace and are counted', () => {
    const resolved = resolveRegions([
      shape('nonzero', square(0, 0, 10), [1, 1, 9, 1], [2, 2, 5, 5, 3, 3], [4, 4]),
    ]);
    expect(signedArea(resolved.region)).toBe(100);
    expect(resolved.region.ringEnds).toHaveLength(1);
    expect(resolved.dropped.zeroAreaRings).toBe(3);
  });

  test('specks are reported with their place and stay', () => {
    const resolved = resolveRegions([shape('nonzero', square(0, 0, 0.1)), shape('nonzero', square(1, 1, 1))]);
    expect(resolved.specks).toHaveLength(1);
    expect(resolved.specks[0]!.areaMm2).toBeCloseTo(0.01, 12);
    expect(outerRingCount(resolved.region)).toBe(2);
  });

  test('nothing drawn gives the empty region', () => {
    const resolved = resolveRegions([]);
    expect(resolved.region.ringEnds).toHaveLength(0);
    expect(resolved.crossingCount).toBe(0);
  });

  test('a drawing of nothing but one point is empty', () => {
    expect(resolveRegions([shape('nonzero', [0, 0, 0, 0, 0, 0])]).region.ringEnds).toHaveLength(0);
    expect(resolveRegions([shape('nonzero', [7, 3, 7, 3, 7, 3])]).region.ringEnds).toHaveLength(0);
  });

  test.each([40, 600])('upright edges a rounding off the vertical meet %i bars in one go', (count) => {
    // turned by 90° in doubles: x differs by the last bits between the ends of the long edges
    const bars = Array.from({ length: count }, (_, i) =>
      square(0, i, 0.5).map((c, j) => (j === 2 || j === 4 ? 20 : c)),
    );
    const turned = (ring: number[]): number[] =>
      ring.map((_, j) => {
        const [x, y] = j % 2 === 0 ? [ring[j]!, ring[j + 1]!] : [ring[j - 1]!, ring[j]!];
        const a = Math.PI / 2;
        return j % 2 === 0 ? x * Math.cos(a) - y * Math.sin(a) : x * Math.sin(a) + y * Math.cos(a);
      });
    const across = turned([5, -1, 15, -1, 15, count + 1, 5, count + 1]);
    const resolved = resolveRegions([
      ...bars.map((bar) => shape('nonzero', turned(bar))),
      shape('nonzero', across),
    ]);
    expect(resolved.crossingCount).toBe(4 * count);
    expect(outerRingCount(resolved.region)).toBe(1);
    // no point was taken together more coarsely to get there: 1e-6 mm is about what doubles tell apart at
    // that size
    expect(resolved.toleranceMm).toBeLessThan(2e-6);
    expect(signedArea(resolved.region)).toBeCloseTo(10 * (count + 2) + count * 5, 6);
    expect(cleanRegionFaults(resolved.region)).toEqual([]);
  });

  test('a coordinate that is not finite is refused', () => {
    expect(() => resolveRegions([shape('nonzero', [0, 0, Number.NaN, 1, 1, 0])])).toThrow(RangeError);
  });
});
