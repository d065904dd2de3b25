import {
  ballCutter,
  bullNoseCutter,
  type CarveStep,
  carve,
  flatCutter,
  heightAt,
  profileCutter,
  radiusAt,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import {
  type CleanRegion,
  radians,
  ringStart,
  ringsBounds,
  rotation,
  transformRings,
} from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holedStars, one, share, untangled } from '../arbitraries.ts';
import { clear, veeOf } from '../support/carve-steps.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

const DEPTH = 0.8;
const vee = veeOf(8);

const JOBS: readonly (readonly [name: string, step: CarveStep])[] = [
  ['flat', clear(flatCutter(0.9))],
  ['ball', clear(ballCutter(1.2))],
  ['bull nose', clear(bullNoseCutter(1, 0.3))],
  ['tapered ball', clear(taperedBallCutter({ tipDiameterMm: 0.4, sideRad: radians(12), diameterMm: 3 }))],
  ['vee that clears', clear(veeCutter({ includedRad: radians(50), diameterMm: 3, tipFlatMm: 0.2 }))],
  ['true tip', vee(60)],
  ['tip flat', vee(60, { tipFlatMm: 0.3 })],
  ['tip radius', vee(60, { tipRadiusMm: 0.25 })],
  ['ball that follows', { cutter: ballCutter(3), way: 'follow' }],
  [
    'points that follow',
    {
      cutter: profileCutter([
        [0, 0.1],
        [0.2, 0.4],
        [1.2, 0.9],
      ]),
      way: 'follow',
    },
  ],
];

const REGIONS: readonly (readonly [name: string, region: CleanRegion])[] = [
  [
    'an angle with a hole',
    cleanFrom([[0, 0, 7, 0.4, 6.6, 3, 3, 3.2, 2.8, 6.5, 0.3, 6]], [rectangle(1, 1, 0.8, 0.7)]),
  ],
  ['a star with holes', transformRings([0.5, 0, 0, 0.5, 0, 0], one(holedStars, 3)) as CleanRegion],
  ['a random polygon', transformRings([0.8, 0, 0, 0.8, 0, 0], one(untangled([14, 14]), 8)) as CleanRegion],
];

/**
 * Distance from a point to the boundary, negative outside: over all edges, with inside by counting crossings.
 */
function signedDistance({ coords, ringEnds }: CleanRegion, px: number, py: number): number {
  let nearest = Infinity;
  let isInside = false;
  ringEnds.forEach((end, k) => {
    const from = ringStart({ coords, ringEnds }, k);
    for (let i = from; i < end; i++) {
      const j = i + 1 === end ? from : i + 1;
      const [ax, ay, bx, by] = [coords[2 * i]!, coords[2 * i + 1]!, coords[2 * j]!, coords[2 * j + 1]!];
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
      nearest = Math.min(nearest, Math.hypot(px - ax - t * dx, py - ay - t * dy));
      if (ay > py !== by > py && px < ax + ((py - ay) / dy) * dx) {
        isInside = !isInside;
      }
    }
  });
  return isInside ? nearest : -nearest;
}

/**
 * Bounds on the depth at a point by trying all centres of a grid: surely reached, and, with half a grid
 * diagonal of slack, surely not exceeded.
 */
function byBruteForce(
  centres: readonly (readonly [number, number, number])[],
  { cutter, way }: CarveStep,
  [x, y]: readonly [number, number],
  slack: number,
): [number, number] {
  const deepest = Math.min(DEPTH, way === 'follow' ? heightAt(cutter, cutter.diameterMm / 2) : Infinity);
  const most = (clearance: number, distance: number): number => {
    if (clearance < 0 || (way === 'clear' && clearance < radiusAt(cutter, deepest))) {
      return 0;
    }
    if (way === 'follow' && clearance < radiusAt(cutter, 0)) {
      return 0;
    }
    const tip = way === 'clear' ? deepest : Math.min(deepest, heightAt(cutter, clearance));
    return tip - heightAt(cutter, distance);
  };
  let low = 0;
  let high = 0;
  for (const [cx, cy, clearance] of centres) {
    const distance = Math.hypot(cx - x, cy - y);
    low = Math.max(low, most(clearance, distance));
    high = Math.max(high, most(clearance + slack, Math.max(0, distance - slack)));
  }
  return [low, high];
}

describe.each(REGIONS)('depth at a point of %s', (_, region) => {
  const axis = medialAxis(region);
  const [minX, minY, maxX, maxY] = ringsBounds(region);
  const step = (maxX - minX) / 75;
  const slack = step * Math.SQRT1_2 * 1.000001;
  const centres: [number, number, number][] = [];
  for (let x = minX; x <= maxX + step; x += step) {
    for (let y = minY; y <= maxY + step; y += step) {
      const clearance = signedDistance(region, x, y);
      if (clearance > -slack) {
        centres.push([x, y, clearance]);
      }
    }
  }

  test.each(JOBS)('%s: between what a grid of centres reaches and what it cannot pass', (_name, job) => {
    const cut = carve(axis, [job], { depthMm: DEPTH });
    let isCut = 0;
    fc.assert(
      fc.property(share, share, (u, v) => {
        const at = [minX + (maxX - minX) * u, minY + (maxY - minY) * v] as const;
        const depth = cut.depthAt(...at);
        const [low, high] = byBruteForce(centres, job, at, slack);
        expect(depth, `${at}`).toBeGreaterThan(low - 1e-9);
        expect(depth, `${at}`).toBeLessThan(high + 1e-9);
        isCut += depth > 0 ? 1 : 0;
      }),
      cases(80),
    );
    expect(isCut).toBeGreaterThan(10);
  });

  test('nothing is cut outside', () => {
    const cut = carve(axis, [vee(60), clear(flatCutter(0.4))], { depthMm: DEPTH });
    fc.assert(
      fc.property(share, share, (u, v) => {
        const [x, y] = [minX - 1 + (maxX - minX + 2) * u, minY - 1 + (maxY - minY + 2) * v];
        const isCut = cut.depthAt(x, y) > 0;
        expect(isCut, `${x}, ${y}`).toBe(signedDistance(region, x, y) > 0);
      }),
      cases(300),
    );
  });
});

test('a flat tip that reaches a point from a short way up a corner cuts it', () => {
  // a corner of 2 atan(3/4), with its bisector along x: a tip of radius f that is c off both walls stands at c / 0.6
  const region = cleanFrom([[0, 0, 40, 30, 40, -30]]);
  const f = 0.15;
  const cut = carve(medialAxis(region), [vee(60, { tipFlatMm: 2 * f })], { depthMm: DEPTH });
  for (const [x, y] of [
    [0.13, 0.05],
    [0.14, 0.1],
    [0.2, 0.12],
    [0.125, -0.08],
  ]) {
    // deepest where the edge of the flat reaches the point, or the flanks do, from further up
    let most = 0;
    for (let at = f / 0.6; at < 2; at += 1e-6) {
      const off = Math.max(f, Math.hypot(at - x, y));
      most = Math.max(most, (0.6 * at - off) / Math.tan(Math.PI / 6));
    }
    expect(most, `${x}, ${y}`).toBeGreaterThan(0.001);
    expect(cut.depthAt(x, y), `${x}, ${y}`).toBeGreaterThan(most - 1e-9);
    expect(cut.depthAt(x, y), `${x}, ${y}`).toBeLessThan(most + 1e-5);
  }
});

describe('depth summed over a grid is the volume', () => {
  const shapes: readonly (readonly [string, CleanRegion])[] = [
    ['a flattened disc', cleanFrom([regular(40, 2.2, 0, 0, 0.1)])],
    ['a bar', transformRings(rotation(0.3), cleanFrom([rectangle(0, 0, 8, 1.3)])) as CleanRegion],
    ...REGIONS,
  ];
  test.each(shapes)('%s', (_, region) => {
    const axis = medialAxis(region);
    const [minX, minY, maxX, maxY] = ringsBounds(region);
    const step = (maxX - minX) / 70;
    for (const [name, job] of JOBS.filter(([, { way }]) => way === 'follow')) {
      const cut = carve(axis, [job], { depthMm: DEPTH });
      let sum = 0;
      for (let x = minX + step / 3; x < maxX; x += step) {
        for (let y = minY + step / 2; y < maxY; y += step) {
          sum += cut.depthAt(x, y);
        }
      }
      // on so coarse a grid the sum is off by about half a percent
      const apart = Math.abs(sum * step * step - cut.volumeMm3);
      expect(apart, name).toBeLessThan(cut.volumeErrorMm3 + 0.006 * cut.volumeMm3);
    }
  });
});
