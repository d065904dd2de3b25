import {
  ballCutter,
  bullNoseCutter,
  type CarveStep,
  type Carving,
  carve,
  flatCutter,
  profileCutter,
  reachedOutline,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import { arcRingsArea, erodedArea, medialAxis, openedArea, reachedArea, vVolume } from '@pourproof/geometry';
import { type CleanRegion, radians, rotation, type Transform, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holedStars, one } from '../arbitraries.ts';
import { clear } from '../support/carve-steps.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

/** Turned, mirrored and scaled copies of a region, each with its scale. */
function* variants(outer: number[], holes: number[][] = []): Generator<[string, number, CleanRegion]> {
  const maps: [string, number, Transform][] = [
    ['as given', 1, rotation(0)],
    ['turned by 17.3°', 1, rotation(radians(17.3))],
    ['mirrored', 1, [-1, 0, 0, 1, 0, 0]],
    ['scaled by 1e6', 1e6, [1e6, 0, 0, 1e6, 0, 0]],
    ['scaled by 1e-6', 1e-6, [1e-6, 0, 0, 1e-6, 0, 0]],
  ];
  const mapped = (map: Transform, ring: number[]): number[] => [
    ...transformRings(map, cleanFrom([ring])).coords,
  ];
  for (const [name, scale, map] of maps) {
    const region = cleanFrom(
      [mapped(map, outer)],
      holes.map((hole) => mapped(map, hole)),
    );
    yield [name, scale, region];
  }
}

function cut(region: CleanRegion, depthMm: number, ...steps: CarveStep[]): Carving {
  return carve(medialAxis(region), steps, { depthMm });
}

/** Equal within 1e-9, relative: what the kernel guarantees on polygons. */
function expectNear(got: number, want: number, whole = want, name = ''): void {
  expect(Math.abs(got - want) / whole, `${name}: ${got} for ${want}`).toBeLessThan(1e-9);
}

const vee = (angleDeg: number, diameterMm: number, tip: object = {}): CarveStep => ({
  cutter: veeCutter({ includedRad: radians(angleDeg), diameterMm, ...tip }),
  way: 'follow',
});

describe('a pointed tip', () => {
  test('bar 30 × 4: b²(3a − b)/12 over tan(A/2), and a level floor at a depth limit', () => {
    for (const [name, scale, region] of variants(rectangle(0, 0, 30, 4))) {
      for (const angle of [30, 60, 90]) {
        const slope = Math.tan(radians(angle / 2));
        const whole = (114.66666666666667 / slope) * scale ** 3;
        const deep = cut(region, 50 * scale, vee(angle, 40 * scale));
        expectNear(deep.volumeMm3, whole, whole, name);
        expectNear(deep.areaMm2, 120 * scale ** 2);
        expectNear(
          deep.wallAreaMm2,
          (120 / Math.sin(radians(angle / 2))) * scale ** 2,
          120 * scale ** 2,
          name,
        );
        expect(deep.volumeErrorMm3).toBeLessThan(1e-9 * whole);
        const t = Math.min(1.7 * slope, 2);
        const capped = (120 * t - 34 * t * t + (4 * t ** 3) / 3) / slope;
        expectNear(
          cut(region, 1.7 * scale, vee(angle, 40 * scale)).volumeMm3,
          capped * scale ** 3,
          whole,
          name,
        );
      }
    }
    const capped = cut(cleanFrom([rectangle(0, 0, 30, 4)]), 1.7, vee(60, 12));
    expect(capped.volumeMm3).toBeCloseTo(149.45312, 4);
    const t = 1.7 * Math.tan(radians(30));
    expectNear(capped.floorAreaMm2, (30 - 2 * t) * (4 - 2 * t));
    expectNear(capped.scallopedFloorMm2, (30 - 2 * t) * (4 - 2 * t));
    expect(capped.perCutter[0]?.limitedBy).toBeUndefined();
  });

  test('a square is a pyramid, a regular polygon a cone over its inradius', () => {
    for (const corners of [3, 4, 6, 60]) {
      for (const [name, scale, region] of variants(regular(corners, 5, 1, 1, 0.3))) {
        const inner = 5 * Math.cos(Math.PI / corners) * scale;
        const area = erodedArea(medialAxis(region), 0);
        const volume = (area * inner) / 3 / Math.tan(radians(30));
        expectNear(cut(region, 100 * scale, vee(60, 40 * scale)).volumeMm3, volume, volume, name);
      }
    }
  });

  test('prismatoid: top 40 × 10, floor 36 × 6, 2 deep is 610.66667', () => {
    const bar = cut(cleanFrom([rectangle(0, 0, 40, 10)]), 2, vee(90, 12));
    expect(bar.volumeMm3).toBeCloseTo(610.6666667, 6);
    expectNear(bar.floorAreaMm2, 36 * 6);
    expectNear(bar.wallAreaMm2, (400 - 216) * Math.SQRT2);
  });

  test('a cutting diameter that is reached first limits the depth and is reported', () => {
    const bar = cut(cleanFrom([rectangle(0, 0, 40, 10)]), 5, vee(90, 4));
    expect(bar.maxDepthMm).toBeCloseTo(2, 12);
    expectNear(bar.perCutter[0]?.depthMm ?? 0, 2);
    expect(bar.perCutter[0]?.limitedBy).toBe('diameter');
    expect(bar.volumeMm3).toBeCloseTo(610.6666667, 6);
  });

  test('agrees with the kernel’s own V volume on random shapes with holes', () => {
    fc.assert(
      fc.property(holedStars, (region) => {
        const axis = medialAxis(region);
        const want = vVolume(axis, { includedRad: radians(60), depthMm: 1.1 });
        expectNear(carve(axis, [vee(60, 20)], { depthMm: 1.1 }).volumeMm3, want);
      }),
      cases(10),
    );
  });
});

describe('a flat tip', () => {
  const t = 0.3;
  test('in a bar: every slice is the opening of a smaller bar', () => {
    for (const [name, scale, region] of variants(rectangle(0, 0, 30, 4))) {
      const slope = Math.tan(radians(30));
      const step = vee(60, 20 * scale, { tipFlatMm: 2 * t * scale });
      const slice = (q: number): number => (30 - 2 * q) * (4 - 2 * q) - (4 - Math.PI) * t * t;
      // Simpson's rule is exact for a quadratic
      const most = 2 - t;
      const whole = ((slice(0) + 4 * slice(most / 2) + slice(most)) / 6) * (most / slope) * scale ** 3;
      const bar = cut(region, 9 * scale, step);
      expectNear(bar.volumeMm3, whole, whole, name);
      expectNear(bar.areaMm2, slice(0) * scale ** 2, whole, name);
      const shallow = ((slice(0) + 4 * slice(slope / 2) + slice(slope)) / 6) * scale ** 3;
      expectNear(cut(region, scale, step).volumeMm3, shallow, whole, name);
      expectNear(
        cut(region, scale, step).sliceArea(0.5 * scale),
        slice(0.5 * slope) * scale ** 2,
        whole,
        name,
      );
    }
  });

  test('in regular polygons', () => {
    for (const corners of [3, 5, 12]) {
      for (const [name, scale, region] of variants(regular(corners, 5, 1, 1, 0.3))) {
        const slope = Math.tan(radians(45));
        const a = 5 * Math.cos(Math.PI / corners) * scale;
        const r = t * scale;
        const area = erodedArea(medialAxis(region), 0);
        const corner = corners * (Math.tan(Math.PI / corners) - Math.PI / corners) * r * r;
        const whole = (((area * a) / 3) * (1 - (r / a) ** 3)) / slope - (corner * (a - r)) / slope;
        expectNear(
          cut(region, 99 * scale, vee(90, 40 * scale, { tipFlatMm: 2 * r })).volumeMm3,
          whole,
          whole,
          name,
        );
      }
    }
  });
});

describe('a rounded tip', () => {
  const b = 0.25;
  const half = radians(30);
  const tip = { tipRadiusMm: b };

  test('in a slot: the triangle less what the rounded tip leaves, as the difference of two lengths', () => {
    const long = cut(cleanFrom([rectangle(0, 0, 30, 2)]), 9, vee(60, 20, tip)).volumeMm3;
    const short = cut(cleanFrom([rectangle(0, 0, 20, 2)]), 9, vee(60, 20, tip)).volumeMm3;
    const missing = b * b * (1 / Math.tan(half) - (Math.PI - 2 * half) / 2);
    expectNear((long - short) / 10, 1 / Math.tan(half) - missing);
  });

  test('in a slot narrower than its ball: part of a disc', () => {
    const long = cut(cleanFrom([rectangle(0, 0, 30, 0.3)]), 9, vee(60, 20, tip)).volumeMm3;
    const short = cut(cleanFrom([rectangle(0, 0, 20, 0.3)]), 9, vee(60, 20, tip)).volumeMm3;
    const angle = Math.asin(0.15 / b);
    expectNear((long - short) / 10, b * b * (angle - Math.sin(angle) * Math.cos(angle)));
  });

  test('in a disc: a cone whose tip is the cap of the ball, within the bound', () => {
    const corners = 2000;
    const disc = cut(cleanFrom([regular(corners, 3 / Math.cos(Math.PI / corners))]), 99, vee(60, 20, tip));
    const touch = b * Math.cos(half);
    const below = touch / Math.tan(half);
    const cap = b * (1 - Math.sin(half));
    const missing = (Math.PI / 3) * (touch ** 2 * below - cap ** 2 * (3 * b - cap));
    const want = (Math.PI * 27) / 3 / Math.tan(half) - missing;
    // the polygon is circumscribed: 1 + (π/n)²/3 times the area of the disc
    const shortBy = want * (1 + (Math.PI / corners) ** 2 / 3) - disc.volumeMm3;
    expect(Math.abs(shortBy)).toBeLessThan(disc.volumeErrorMm3);
    expect(disc.volumeErrorMm3).toBeLessThan(1e-6 * want);
  });

  test('at a waist the surface is uncertain beyond rounding, in a slot it is not', () => {
    const waist = cut(cleanFrom([[-1, -1, 0, -0.1, 1, -1, 1, 1, 0, 0.1, -1, 1]]), 9, vee(60, 20, tip));
    expect(waist.wallAreaErrorMm2).toBeGreaterThan(1e-5 * waist.wallAreaMm2);
    expect(waist.wallAreaErrorMm2).toBeLessThan(0.01 * waist.wallAreaMm2);
    const slot = cut(cleanFrom([rectangle(0, 0, 30, 2)]), 0.5, vee(60, 20, tip));
    expect(slot.wallAreaErrorMm2).toBeLessThan(1e-6 * slot.wallAreaMm2);
  });

  test('under a ball much wider than all strokes nothing is uncertain, beside a reflex corner neither', () => {
    const step = cut(cleanFrom([[0, 0, 20, 0, 20, 2, 12, 2, 12, 1.2, 0, 1.2]]), 9, {
      cutter: ballCutter(20),
      way: 'follow',
    });
    expect(step.wallAreaErrorMm2).toBeLessThan(1e-6 * step.wallAreaMm2);
  });

  test('with a depth limit that the flanks reach everywhere, only corners are uncertain', () => {
    const bar = cut(cleanFrom([rectangle(0, 0, 30, 10)]), 1, vee(60, 20, tip));
    expect(bar.volumeErrorMm3).toBeLessThan(1e-6 * bar.volumeMm3);
    expect(bar.volumeErrorMm3).toBeGreaterThan(0);
  });
});

describe('cutters that clear', () => {
  const [w, l] = [6, 30];

  /** ∫ of the slice of a bar over height by Simpson's rule, for a reach as a function of height. */
  function barVolume(centre: number, depth: number, reachAt: (h: number) => number, stops: number[]): number {
    const slice = (h: number): number => {
      const t = reachAt(h);
      const inset = 2 * (centre - t);
      return (w - inset) * (l - inset) - (4 - Math.PI) * t * t;
    };
    let sum = 0;
    [0, ...stops, depth].reduce((from, to) => {
      const steps = 2000;
      for (let k = 0; k < steps; k++) {
        // denser at the lower end, where a ball's radius grows fastest
        const [p, q] = [from + (to - from) * (k / steps) ** 2, from + (to - from) * ((k + 1) / steps) ** 2];
        sum += ((q - p) * (slice(p) + 4 * slice((p + q) / 2) + slice(q))) / 6;
      }
      return to;
    });
    return sum;
  }

  test('ball: a slot lacks the corners of two quarter discs', () => {
    const r = 1.5;
    const long = cut(cleanFrom([rectangle(0, 0, 30, w)]), 4, clear(ballCutter(2 * r)));
    const short = cut(cleanFrom([rectangle(0, 0, 20, w)]), 4, clear(ballCutter(2 * r)));
    expectNear((long.volumeMm3 - short.volumeMm3) / 10, w * 4 - r * r * (2 - Math.PI / 2));
    expectNear((long.wallAreaMm2 - short.wallAreaMm2) / 10, 2 * (4 - r) + Math.PI * r);
    expectNear((long.floorAreaMm2 - short.floorAreaMm2) / 10, w - 2 * r);
    expect(long.scallopedFloorMm2).toBe(long.floorAreaMm2);
  });

  test('a ball at less than its radius is as wide as its chord at the face', () => {
    const r = 1.5;
    const bar = cut(cleanFrom([rectangle(0, 0, l, w)]), 0.5, clear(ballCutter(2 * r)));
    const reach = (h: number): number => Math.sqrt(h * (2 * r - h));
    const want = barVolume(reach(0.5), 0.5, reach, []);
    expect(Math.abs(bar.volumeMm3 - want) / want).toBeLessThan(1e-7);
    expectNear(bar.areaMm2, w * l - (4 - Math.PI) * reach(0.5) ** 2);
  });

  test('bull nose', () => {
    const [r, c] = [1.5, 0.5];
    const bar = cut(cleanFrom([rectangle(0, 0, l, w)]), 2, clear(bullNoseCutter(2 * r, c)));
    const reach = (h: number): number => (h >= c ? r : r - c + Math.sqrt(h * (2 * c - h)));
    const want = barVolume(r, 2, reach, [c]);
    expect(Math.abs(bar.volumeMm3 - want) / want).toBeLessThan(1e-7);
    expectNear(bar.floorAreaMm2, (w - 1) * (l - 1) - (4 - Math.PI) * 1);
    expect(bar.scallopedFloorMm2).toBe(0);
  });

  test('tapered ball', () => {
    const side = radians(5);
    const b = 0.5;
    const bar = cut(
      cleanFrom([rectangle(0, 0, l, w)]),
      3,
      clear(taperedBallCutter({ tipDiameterMm: 2 * b, sideRad: side, diameterMm: 3 })),
    );
    const touch = b * (1 - Math.sin(side));
    const reach = (h: number): number =>
      h < touch ? Math.sqrt(h * (2 * b - h)) : b * Math.cos(side) + (h - touch) * Math.tan(side);
    const want = barVolume(reach(3), 3, reach, [touch]);
    expect(Math.abs(bar.volumeMm3 - want) / want).toBeLessThan(1e-7);
  });

  test('a profile given as points: two flat bits in one', () => {
    const stepped = profileCutter([
      [0, 0.5],
      [1, 0.5],
      [1, 1.5],
      [3, 1.5],
    ]);
    const bar = cut(cleanFrom([rectangle(0, 0, l, w)]), 2.5, clear(stepped));
    const slice = (t: number): number => (w - 3 + 2 * t) * (l - 3 + 2 * t) - (4 - Math.PI) * t * t;
    expectNear(bar.volumeMm3, slice(0.5) + 1.5 * slice(1.5));
    const around = (t: number): number => 2 * (w - 3 + l - 3) + 2 * Math.PI * t;
    expectNear(bar.wallAreaMm2, around(0.5) + 1.5 * around(1.5) + slice(1.5) - slice(0.5));
  });
});

describe('slices', () => {
  test('outlines have the area that sums over the axis give, for any centre radius and reach', () => {
    fc.assert(
      fc.property(holedStars, (region) => {
        const axis = medialAxis(region);
        for (const centre of [0.05, 0.2, 0.45, 0.8]) {
          for (const share of [0, 0.3, 0.8, 1]) {
            const area = arcRingsArea(reachedOutline(axis, centre, share * centre));
            expectNear(area, reachedArea(axis, centre, share * centre), erodedArea(axis, 0));
          }
        }
      }),
      cases(20),
    );
  });

  test('a fine bit that stops above a wide one leaves ledges in its corners, as large as the corners differ', () => {
    const square = cut(
      cleanFrom([rectangle(0, 0, 20, 20)]),
      2,
      clear(flatCutter(2), 1),
      clear(flatCutter(6)),
    );
    expectNear(square.ledgeAreaMm2, (4 - Math.PI) * (9 - 1));
    expectNear(square.floorAreaMm2, 400 - (4 - Math.PI) * 9);
  });

  test('two flat bits: the finer one determines the cut, and the additions sum to it', () => {
    const axis = medialAxis(one(holedStars, 5));
    const carving = carve(axis, [clear(flatCutter(1.2)), clear(flatCutter(0.4))], { depthMm: 3 });
    expectNear(carving.areaMm2, openedArea(axis, 0.2));
    expectNear(carving.volumeMm3, 3 * openedArea(axis, 0.2));
    const [first, second] = carving.perCutter;
    expectNear(first?.areaMm2 ?? 0, openedArea(axis, 0.6));
    expectNear((first?.areaMm2 ?? 0) + (second?.areaMm2 ?? 0), carving.areaMm2);
    expect(second?.places.length).toBeGreaterThan(0);
  });
});
