import { resolveRegions } from '@pourproof/arrangement';
import {
  ballCutter,
  bullNoseCutter,
  type CarveStep,
  type Carving,
  carve,
  flatCutter,
  heightAt,
  radiusAt,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import { type MedialAxis, medialAxis, polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, perimeter, radians, rotation, signedArea, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holedStars, one, stars, untangled } from '../arbitraries.ts';
import { clear, veeOf } from '../support/carve-steps.ts';
import { cases, isLong } from '../support/lane.ts';
import { offsetPeers, PEER_GRID_MM } from '../support/oracles/offset-peers.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

const vee = veeOf(20);

const EXACT: readonly (readonly [string, CarveStep])[] = [
  ['flat', clear(flatCutter(0.8))],
  ['ball', clear(ballCutter(0.9))],
  ['bull nose', clear(bullNoseCutter(0.8, 0.2))],
  ['tapered ball', clear(taperedBallCutter({ tipDiameterMm: 0.3, sideRad: radians(10), diameterMm: 3 }))],
  ['true tip', vee(60)],
  ['tip flat', vee(45, { tipFlatMm: 0.2 })],
];

const regions = fc.oneof(stars([3, 30], [1, 6]), untangled([3, 16]), holedStars);
const starWithHoles = one(holedStars, 30);

/** Expects the volume of a cut at most 0.7 mm deep to be the integral of its slices. */
function expectIntegral(region: CleanRegion, step: CarveStep): void {
  const axis = medialAxis(region);
  const cut = carve(axis, [step], { depthMm: 0.7 });
  // a flat tip that follows leaves a floor above the limit in narrow artwork, below which there are no slices
  const widest = axis.nodeR.reduce((most, clearance) => Math.max(most, clearance), 0);
  const deepest = step.way === 'follow' ? Math.min(0.7, heightAt(step.cutter, widest)) : 0.7;
  // Simpson's rule in 200 steps; a ball's slices change like a square root at the floor, an error of some 1e-4
  let sum = 0;
  const steps = 200;
  for (let k = 0; k < steps; k++) {
    const [a, b] = [(deepest * k) / steps, (deepest * (k + 1)) / steps];
    const [low, high] = [cut.sliceArea(a), cut.sliceArea(Math.min(b, deepest * (1 - 1e-12)))];
    sum += ((b - a) * (low + 4 * cut.sliceArea((a + b) / 2) + high)) / 6;
  }
  // equal where the cutter fits nowhere
  expect(Math.abs(sum - cut.volumeMm3)).toBeLessThanOrEqual(cut.volumeErrorMm3 + 2e-4 * cut.volumeMm3);
}

describe('laws of a cut', () => {
  test('the volume of a flat tip is the integral of the slices where the artwork is too narrow for the depth', () => {
    // once the integral went on through the floor, 0.17 mm deep, up to the limit, and missed by a share of 2.0e-4
    expectIntegral(
      cleanFrom([[3.720865, 0.025959, 3.233032, 0.373125, 0.1338, 0]]),
      vee(45, { tipFlatMm: 0.2 }),
    );
  });

  test.each(EXACT)('%s: the volume is the integral of the slices', (_, step) => {
    fc.assert(
      fc.property(regions, (region) => {
        expectIntegral(region, step);
      }),
      cases(4),
    );
  });

  test.each(EXACT.filter(([name]) => name !== 'tapered ball'))(
    '%s: a little deeper adds the floor where walls widen upwards, the whole pocket where they end upright',
    (_, step) => {
      fc.assert(
        fc.property(regions, (region) => {
          const axis = medialAxis(region);
          const at = (depthMm: number): Carving => carve(axis, [step], { depthMm });
          const h = 1e-4;
          const gain = (at(0.6 + h).volumeMm3 - at(0.6 - h).volumeMm3) / (2 * h);
          const { floorAreaMm2, areaMm2 } = at(0.6);
          const want = step.way === 'follow' ? floorAreaMm2 : areaMm2;
          expect(Math.abs(gain - want)).toBeLessThan(1e-3 * areaMm2 + 1e-9);
        }),
        cases(4),
      );
    },
  );

  test('slices shrink downwards, lie in the artwork, and have equal areas by number and by outline', () => {
    fc.assert(
      fc.property(regions, fc.constantFrom(...EXACT), (shape, [, step]) => {
        const cut = carve(medialAxis(shape), [step], { depthMm: 0.7 });
        let before = signedArea(shape) * (1 + 1e-12);
        for (const depth of [0, 0.1, 0.3, 0.5, 0.69]) {
          const area = cut.sliceArea(depth);
          expect(area).toBeLessThanOrEqual(before + 1e-9);
          const outline = polygonFromArcs(cut.sliceOutline(depth), 1e-5);
          expect(Math.abs(signedArea(outline) - area)).toBeLessThan(1e-5 * perimeter(shape) + 1e-9);
          before = area;
        }
      }),
      cases(25),
    );
  });

  test('all measures follow turning, mirroring and scaling', () => {
    const steps = (s: number): CarveStep[] => [
      {
        cutter: veeCutter({ includedRad: radians(60), diameterMm: 20 * s, tipFlatMm: 0.1 * s }),
        way: 'follow',
      },
      clear(flatCutter(0.5 * s)),
    ];
    for (const [name, scale, map] of [
      ['turned', 1, rotation(1.1)],
      ['mirrored', 1, [-1, 0, 0, 1, 0, 0]],
      ['scaled up', 1e6, [1e6, 0, 0, 1e6, 0, 0]],
      ['scaled down', 1e-6, [1e-6, 0, 0, 1e-6, 0, 0]],
    ] as const) {
      const shape = starWithHoles;
      const mapped = transformRings(map, shape);
      const rings = Array.from(mapped.ringEnds, (end, k) => [
        ...mapped.coords.subarray(2 * (k === 0 ? 0 : mapped.ringEnds[k - 1]!), 2 * end),
      ]);
      const one = carve(medialAxis(shape), steps(1), { depthMm: 0.6 });
      const other = carve(medialAxis(cleanFrom([rings[0]!], rings.slice(1))), steps(scale), {
        depthMm: 0.6 * scale,
      });
      expect(other.areaMm2 / one.areaMm2 / scale ** 2, name).toBeCloseTo(1, 9);
      expect(other.volumeMm3 / one.volumeMm3 / scale ** 3, name).toBeCloseTo(1, 9);
      expect(other.wallAreaMm2 / one.wallAreaMm2 / scale ** 2, name).toBeCloseTo(1, 9);
      expect(other.floorAreaMm2 / one.floorAreaMm2 / scale ** 2, name).toBeCloseTo(1, 9);
      expect(other.scallopedFloorMm2 / one.scallopedFloorMm2 / scale ** 2, name).toBeCloseTo(1, 8);
    }
  });

  test('the order of cutters changes what each adds, never the cut', () => {
    const axis = medialAxis(starWithHoles);
    const steps = [
      clear(flatCutter(1.4)),
      clear(ballCutter(0.6)),
      clear(flatCutter(0.5), 0.4),
      clear(bullNoseCutter(1, 0.2)),
    ];
    const one = carve(axis, steps, { depthMm: 0.8 });
    const other = carve(axis, [...steps].reverse(), { depthMm: 0.8 });
    const apart = one.volumeErrorMm3 + other.volumeErrorMm3 + 1e-9 * one.volumeMm3;
    expect(Math.abs(one.volumeMm3 - other.volumeMm3)).toBeLessThanOrEqual(apart);
    expect(other.areaMm2).toBeCloseTo(one.areaMm2, 9);
    expect(other.floorAreaMm2).toBeCloseTo(one.floorAreaMm2, 9);
    for (const cut of [one, other]) {
      const sum = cut.perCutter.reduce((total, step) => total + step.volumeMm3, 0);
      expect(Math.abs(sum - cut.volumeMm3)).toBeLessThanOrEqual(apart);
      expect(Math.min(...cut.perCutter.map((step) => step.volumeMm3))).toBeGreaterThanOrEqual(-apart);
    }
  });

  test('cutting once more what is cut changes nothing', () => {
    for (const step of [clear(flatCutter(0.8)), vee(60)]) {
      const cut = carve(medialAxis(starWithHoles), [step], { depthMm: 0.7 });
      const outline = polygonFromArcs(cut.outline, 1e-5);
      const again = carve(medialAxis(resolveRegions([{ ...outline, fillRule: 'nonzero' }]).region), [step], {
        depthMm: 0.7,
      });
      expect(Math.abs(again.areaMm2 - cut.areaMm2)).toBeLessThan(2e-5 * perimeter(outline));
      expect(Math.abs(again.volumeMm3 - cut.volumeMm3)).toBeLessThan(2e-5 * perimeter(outline));
    }
  });
});

describe('several cutters', () => {
  test('bound the volume of several rounded tips, of which none contains the others', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 1.88, 8.12)]));
    const [blunt, fine] = [vee(30, { tipRadiusMm: 1.09 }), vee(60, { tipRadiusMm: 0.88 })];
    const alone = carve(axis, [fine], { depthMm: 1.026 });
    // either order takes seconds
    const orders = [
      [blunt, fine],
      [fine, blunt],
    ];
    for (const steps of isLong ? orders : orders.slice(0, 1)) {
      const both = carve(axis, steps, { depthMm: 1.026 });
      // in a stroke this narrow the finer tip makes all of the cut, save slivers along its edge
      expect(both.volumeMm3).toBeGreaterThanOrEqual(alone.volumeMm3);
      expect(both.volumeMm3).toBeLessThan(1.001 * alone.volumeMm3);
      expect(both.volumeErrorMm3).toBeGreaterThan(alone.volumeErrorMm3);
      expect(both.volumeErrorMm3).toBeLessThan(0.15 * both.volumeMm3);
    }
  });

  const bar = medialAxis(cleanFrom([rectangle(0, 0, 30, 10)]));

  test('end at their greatest depth, whatever rounding does on the way there', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 16, 14)]));
    const depthMm = 3.501;
    fc.assert(
      fc.property(fc.double({ min: 1, max: 6, noNaN: true }), (diameterMm) => {
        const capped: CarveStep = {
          cutter: veeCutter({ includedRad: radians(120), diameterMm }),
          way: 'follow',
        };
        const cut = carve(axis, [clear(bullNoseCutter(6.03, 0.53)), capped, clear(flatCutter(1.2))], {
          depthMm,
        });
        expect(cut.volumeMm3).toBeLessThanOrEqual(cut.areaMm2 * depthMm * (1 + 1e-9));
        expect(cut.maxDepthMm).toBe(depthMm);
      }),
      { ...cases(40), examples: [[3.23342]] },
    );
  });

  test('a flat bit clears only the level floor that a V leaves, and takes the scallops there', () => {
    const slope = Math.tan(radians(30));
    const inset = 2 * slope;
    const cut = carve(bar, [vee(60), clear(flatCutter(3))], { depthMm: 2 });
    const [w, l] = [10 - 2 * inset, 30 - 2 * inset];
    const swept = w * l - (4 - Math.PI) * 1.5 ** 2;
    expect(cut.floorAreaMm2).toBeCloseTo(w * l, 9);
    expect(cut.perCutter[1]?.floorMm2).toBeCloseTo(swept, 9);
    expect(cut.scallopedFloorMm2).toBeCloseTo(w * l - swept, 9);
    expect(cut.perCutter[1]?.areaMm2).toBeCloseTo(0, 9);
    expect(cut.perCutter[1]?.volumeMm3).toBeCloseTo(0, 9);
    expect(cut.volumeMm3).toBeCloseTo(carve(bar, [vee(60)], { depthMm: 2 }).volumeMm3, 9);
  });

  test('a ball beside a V stays clear of its slopes at every depth', () => {
    const cut = carve(bar, [vee(90), clear(ballCutter(2))], { depthMm: 2 });
    const alone = carve(bar, [vee(90)], { depthMm: 2 });
    expect(cut.volumeMm3).toBeCloseTo(alone.volumeMm3, 9);
    for (const [x, y] of [
      [15, 1],
      [15, 1.9],
      [1, 5],
      [2.5, 2.5],
    ] as const) {
      expect(cut.depthAt(x, y)).toBeCloseTo(alone.depthAt(x, y), 9);
    }
  });

  test('below a V that ends early a flat bit goes on with upright walls', () => {
    const cut = carve(
      bar,
      [
        { cutter: veeCutter({ includedRad: Math.PI / 2, diameterMm: 2 }), way: 'follow' },
        clear(flatCutter(1)),
      ],
      {
        depthMm: 3,
      },
    );
    // 1 deep and 1 in on all sides by the V, then 2 more by the bit with its corners
    const slope = 300 * 1 - 40 + 4 / 3;
    const floor = 8 * 28 - (4 - Math.PI) * 0.25;
    expect(cut.perCutter[0]?.depthMm).toBeCloseTo(1, 12);
    expect(cut.volumeMm3).toBeCloseTo(slope + 2 * floor, 9);
    expect(cut.floorAreaMm2).toBeCloseTo(floor, 9);
    expect(cut.ledgeAreaMm2).toBeCloseTo(8 * 28 - floor, 9);
    expect(cut.maxDepthMm).toBe(3);
  });

  test('a steep V that ends early above a wide one: two cuts with slices of their own', () => {
    const steep = { ...vee(60), depthMm: 0.8 };
    const cut = carve(bar, [steep, vee(90, { tipFlatMm: 0.3 })], { depthMm: 2 });
    const deep = (step: CarveStep, depthMm: number): number => carve(bar, [step], { depthMm }).volumeMm3;
    const wide = vee(90, { tipFlatMm: 0.3 });
    const want = deep(vee(60), 0.8) + deep(wide, 2) - deep(wide, 0.8);
    expect(cut.volumeMm3).toBeCloseTo(want, 9);
    expect(cut.maxDepthMm).toBe(2);
    expect(cut.ledgeAreaMm2).toBeCloseTo(
      cut.sliceArea(0.8) - carve(bar, [wide], { depthMm: 2 }).sliceArea(0.8),
      9,
    );
  });

  test('a fine bit that may not go as deep', () => {
    const cut = carve(bar, [clear(flatCutter(4)), clear(flatCutter(1, { cuttingLengthMm: 1.5 }))], {
      depthMm: 3,
    });
    const [coarse, fine] = [300 - (4 - Math.PI) * 4, 300 - (4 - Math.PI) * 0.25];
    expect(cut.volumeMm3).toBeCloseTo(1.5 * coarse + 1.5 * fine, 9);
    expect(cut.perCutter[1]).toMatchObject({ depthMm: 1.5, limitedBy: 'length' });
    expect(cut.perCutter[1]?.places.length).toBe(4);
    expect(cut.perCutter[1]?.areaMm2).toBeCloseTo(fine - coarse, 9);
    // both tangents at each corner, twice the difference of the radii
    expect(cut.perCutter[1]?.lengthMm).toBeCloseTo(8 * 1.5, 9);
    expect(cut.ledgeAreaMm2).toBeCloseTo(fine - coarse, 9);
  });

  test('cutters of which neither contains the other are joined within the stated tolerance', () => {
    // shallow and wide against deep and narrow, with a corner radius between
    const steps = [clear(bullNoseCutter(2, 0.9)), clear(flatCutter(2.2))];
    const cut = carve(bar, steps, { depthMm: 0.8 });
    const alone = steps.map((step) => carve(bar, [step], { depthMm: 0.8 }).volumeMm3);
    expect(cut.volumeMm3).toBeGreaterThan(Math.max(...alone) - cut.volumeErrorMm3);
    expect(cut.volumeErrorMm3).toBeLessThan(0.01 * cut.volumeMm3);
    let sum = 0;
    const n = 150;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        sum += cut.depthAt((30 * (i + 0.5)) / n, (10 * (j + 0.5)) / n);
      }
    }
    expect(Math.abs((sum * 300) / n ** 2 - cut.volumeMm3)).toBeLessThan(0.005 * cut.volumeMm3);
  });

  test('corners between chords of a flattened curve are no places', () => {
    const disc = medialAxis(cleanFrom([regular(200, 6), regular(60, 2, 20, 0)]));
    const cut = carve(disc, [clear(flatCutter(3)), clear(flatCutter(1))], { depthMm: 1 });
    expect(cut.perCutter[0]?.places.length).toBe(2);
    expect(cut.perCutter[1]?.places).toEqual([]);
  });
});

describe('slices and volumes against independent offset engines', () => {
  const ARC_MM = 5e-4;
  const DEPTH = 0.7;

  test.each(EXACT)('%s', async (_, step) => {
    const peers = await offsetPeers();
    for (const shape of [one(holedStars, 3), one(stars([30, 30], [1, 6]), 4)]) {
      const axis: MedialAxis = medialAxis(shape);
      const cut = carve(axis, [step], { depthMm: DEPTH });
      for (const peer of peers) {
        const known = new Map<string, number>();
        const slice = (depth: number): number => {
          const { cutter, way } = step;
          const [flat, slope] = [radiusAt(cutter, 0), radiusAt(cutter, 1) - radiusAt(cutter, 0)];
          const centre = way === 'clear' ? radiusAt(cutter, DEPTH) : flat + depth * slope;
          const reach = way === 'clear' ? radiusAt(cutter, DEPTH - depth) : flat;
          const key = `${centre} ${reach}`;
          const area = known.get(key) ?? peer.areas(shape, centre, [reach], ARC_MM)[0]!;
          known.set(key, area);
          return area;
        };
        const bound = (2 * peer.arcExcess * ARC_MM + 4 * PEER_GRID_MM) * perimeter(shape);
        for (const depth of [0.1, 0.35, 0.6]) {
          expect(Math.abs(cut.sliceArea(depth) - slice(depth)), peer.name).toBeLessThan(bound);
        }
        // prisms under the slices at the lower ends of bands lie inside the cut, those at the upper ends hold
        // it
        const n = 6;
        const areas = Array.from({ length: n + 1 }, (_v, k) => slice((DEPTH * Math.min(k, n - 1e-9)) / n));
        const sum = (from: number): number =>
          areas.slice(from, from + n).reduce((a, b) => a + b, 0) * (DEPTH / n);
        expect(cut.volumeMm3, peer.name).toBeGreaterThan(sum(1) - bound * DEPTH);
        expect(cut.volumeMm3, peer.name).toBeLessThan(sum(0) + bound * DEPTH + cut.volumeErrorMm3);
      }
    }
  });
});
