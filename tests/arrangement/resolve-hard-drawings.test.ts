import { CrossingsError, MAX_CROSSINGS, resolveRegions } from '@pourproof/arrangement';
import { packRings, type Region, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { regular } from '../support/shapes/clean-from.ts';

function shape(...rings: number[][]): Region {
  return { ...packRings(rings), fillRule: 'nonzero' };
}

/** Thin triangles across a disc of 50 mm that all pass within `spread` of its middle. */
function linesThroughOneNode(count: number, spread: number): Region[] {
  return Array.from({ length: count }, (_, i) => {
    const x = 50 * Math.cos((Math.PI * i) / count);
    const y = 50 * Math.sin((Math.PI * i) / count);
    return shape([x, y, -x, -y, -0.9 * x, -0.9 * y - spread]);
  });
}

/** A ring through points that jump about and so crosses itself all over. */
function tangle(points: number): number[] {
  return Array.from({ length: 2 * points }, (_, i) => 50 + 50 * Math.sin(12.9898 * (i + 1) ** 2));
}

describe('drawings that are hard to resolve', () => {
  test.each([
    ['wide against the grid', 0.1],
    ['a thousandth of a mm', 1e-3],
    ['denser than the grid', 1e-5],
  ])('60 lines through one node, %s, come out clean', (_, spread) => {
    const { region, toleranceMm } = resolveRegions(linesThroughOneNode(60, spread));
    expect(cleanRegionFaults(region)).toEqual([]);
    // 33 µm is the coarsest that the resolver may go
    expect(toleranceMm).toBeLessThan(0.033);
    // each triangle alone has half of 5 mm (base along the line) times its height across it; overlaps only take away
    const alone = linesThroughOneNode(60, spread).reduce((sum, one) => sum + Math.abs(signedArea(one)), 0);
    expect(signedArea(region)).toBeLessThanOrEqual(alone + 1e-3);
  });

  test.each([1, 1e-6, 1e6])(
    'a tangle scaled by %d has the crossings and the scaled area of the tangle',
    (scale) => {
      const plain = resolveRegions([shape(tangle(40))]);
      const scaled = resolveRegions([shape(tangle(40).map((c) => c * scale))]);
      expect(cleanRegionFaults(scaled.region)).toEqual([]);
      expect(scaled.crossingCount).toBe(plain.crossingCount);
      // both bend edges by at most about 1e-8 of their extent
      expect(Math.abs(signedArea(scaled.region) / scale ** 2 / signedArea(plain.region) - 1)).toBeLessThan(
        1e-6,
      );
    },
  );

  test('its crossings are those that comparing all pairs of edges finds', () => {
    const ring = tangle(40);
    let expected = 0;
    const n = ring.length / 2;
    const at = (i: number): readonly [number, number] => [ring[2 * (i % n)]!, ring[2 * (i % n) + 1]!];
    const side = (
      a: readonly [number, number],
      b: readonly [number, number],
      c: readonly [number, number],
    ): number => Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++) {
        const [p, q, r, s] = [at(i), at(i + 1), at(j), at(j + 1)];
        if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) {
          expected++;
        }
      }
    }
    // the tangle is one: without crossings the comparison would say nothing
    expect(expected).toBeGreaterThan(100);
    expect(resolveRegions([shape(ring)]).crossingCount).toBe(expected);
  });

  test('far from the origin a part thinner than two units in the last place comes out clean', () => {
    // the long lane's find of seed 674497522: between edges 5 and 6 of the result there is no double
    const far = (list: readonly number[]): number[] => list.map((c) => 1e5 + c);
    const { region } = resolveRegions([
      shape(far([1, 0, 0, 0, 1, 2, 1, 2.33333333333]), far([0, 0, 0, 0, 0, 0])),
      shape(far([2, 1.66666666667, 2, 2, 0, 1.66666666667, 1.33333333333, 0, 0, 2])),
    ]);
    expect(cleanRegionFaults(region)).toEqual([]);
    expect(region.ringEnds).toHaveLength(2);
  });

  test('a fan of wedges around one point is one part for each wedge', () => {
    const wedges = Array.from({ length: 300 }, (_, i) => {
      const t = (2 * Math.PI * i) / 300;
      const u = (2 * Math.PI * (i + 0.5)) / 300;
      return shape([0, 0, 50 * Math.cos(t), 50 * Math.sin(t), 50 * Math.cos(u), 50 * Math.sin(u)]);
    });
    const { region, crossingCount } = resolveRegions(wedges);
    expect(cleanRegionFaults(region)).toEqual([]);
    expect(crossingCount).toBe(0);
    expect(region.ringEnds).toHaveLength(300);
    expect(signedArea(region)).toBeCloseTo(300 * 1250 * Math.sin(Math.PI / 300), 8);
  });

  test('a star polygon crosses itself n(n − 3)/2 times, and all are counted', () => {
    // so few points that crossings near the middle lie apart by more than the grid
    expect(resolveRegions([shape(starPolygon(201))]).crossingCount).toBe((201 * 198) / 2);
  });

  test('a star polygon of 2,001 points is refused, with the crossings found and the limit', () => {
    const error = refused(() => resolveRegions([shape(starPolygon(2001))]));
    expect(error.found).toBe(MAX_CROSSINGS + 1);
    expect(error.limit).toBe(MAX_CROSSINGS);
    expect(error.message).toMatch(/more than 1,000,000 times.*Join shapes/u);
  });

  test('5,000 circles piled up are refused', () => {
    const pile = Array.from({ length: 5000 }, (_, i) => {
      // shares that never repeat, spread evenly
      const [s, t, u] = [0.6180339, 0.7548777, 0.5698403].map((step) => (i * step) % 1);
      return shape(regular(144, 5 + 10 * u, 20 * s, 20 * t));
    });
    expect(refused(() => resolveRegions(pile)).found).toBe(MAX_CROSSINGS + 1);
  });
});

/** The star polygon that joins each of n points on a circle to the one farthest away, n odd. */
function starPolygon(n: number): number[] {
  return Array.from({ length: n }, (_, i) => {
    const turn = (2 * Math.PI * ((i * ((n - 1) / 2)) % n)) / n;
    return [50 * Math.cos(turn), 50 * Math.sin(turn)];
  }).flat();
}

function refused(act: () => unknown): CrossingsError {
  try {
    act();
  } catch (error) {
    if (error instanceof CrossingsError) {
      return error;
    }
    throw error;
  }
  throw new Error('nothing was refused');
}
