import {
  ballCutter,
  bullNoseCutter,
  type CarvedWalls,
  type CarveStep,
  carve,
  carvedWalls,
  flatCutter,
  profileCutter,
} from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import { radians } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holedStars, one } from '../arbitraries.ts';
import { clear, veeOf } from '../support/carve-steps.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

const vee = veeOf(30);

const sum = (walls: CarvedWalls, of: (k: number) => number): number =>
  Array.from({ length: walls.count }, (_, k) => of(k)).reduce((a, b) => a + b, 0);

describe('walls in three dimensions', () => {
  test('60° V in a bar: exposures of both long walls with and without dive are the closed forms', () => {
    const bar = carve(medialAxis(cleanFrom([rectangle(0, 0, 30, 4)])), [vee(60)], { depthMm: 1 });
    for (const [diveDeg, low, high] of [
      [0, 0.8660254, 0.8660254],
      [10, 0.7660444, 0.9396926],
    ] as const) {
      const walls = carvedWalls(bar, { grainRad: radians(90), diveRad: radians(diveDeg) });
      const long = Array.from({ length: walls.count }, (_, k) => k).filter(
        (k) => walls.isFloor[k] === 0 && Math.abs(walls.normals[3 * k + 1]!) > 0.5,
      );
      const seen = long.map((k) => walls.exposures[k]!);
      expect(Math.min(...seen)).toBeCloseTo(low, 7);
      expect(Math.max(...seen)).toBeCloseTo(high, 7);
    }
  });

  test('upright walls: a bar’s two widths across the fibre, a disc’s four radii, and the floor by its dive', () => {
    for (const [grainDeg, want] of [
      [0, 8],
      [90, 60],
      [30, 36.9282],
      [45, 48.08326],
    ] as const) {
      const bar = carve(medialAxis(cleanFrom([rectangle(0, 0, 30, 4)])), [clear(flatCutter(0.001))], {
        depthMm: 2,
      });
      const walls = carvedWalls(bar, { grainRad: radians(grainDeg) });
      // corners of a tiny bit are off by its radius
      expect(walls.exposedMm2 / 2).toBeCloseTo(want, 2);
    }
    const disc = carve(medialAxis(cleanFrom([regular(2000, 5)])), [clear(flatCutter(2))], { depthMm: 1 });
    const walls = carvedWalls(disc, { grainRad: 1, diveRad: radians(10) });
    const level = sum(walls, (k) => (walls.isFloor[k] === 1 ? 0 : walls.areasMm2[k]! * walls.exposures[k]!));
    expect(level / (20 * Math.cos(radians(10)))).toBeCloseTo(1, 5);
    const floor = walls.exposedMm2 - level;
    expect(floor / (disc.floorAreaMm2 * Math.sin(radians(10)))).toBeCloseTo(1, 9);
  });

  test('along a vertical fibre every surface is exposed by its plan area: together the area at the face', () => {
    // errors of the plan, and how much smaller elements are: chords for arcs, and rounded tips in corners by
    // own normals
    const jobs: readonly [string, CarveStep[], number, number][] = [
      ['flat', [clear(flatCutter(0.6))], 1e-9, 1e-9],
      ['two flats', [clear(flatCutter(1.2)), { ...clear(flatCutter(0.5)), depthMm: 0.4 }], 1e-9, 1e-9],
      ['one that fits nowhere first', [clear(flatCutter(50)), clear(flatCutter(0.5))], 1e-9, 1e-9],
      ['true tip', [vee(60)], 1e-9, 1e-9],
      ['true tip, then flat', [vee(60), clear(flatCutter(0.5))], 1e-9, 1e-9],
      ['a steep V above a wide one', [{ ...vee(60), depthMm: 0.3 }, vee(90)], 1e-9, 1e-9],
      ['tip flat', [vee(60, { tipFlatMm: 0.1 })], 1e-3, 1e-9],
      ['tip radius', [vee(60, { tipRadiusMm: 0.1 })], 1e-4, 0.015],
      ['ball', [clear(ballCutter(0.6))], 1e-4, 5e-4],
      ['bull nose', [clear(bullNoseCutter(0.8, 0.2))], 1e-4, 5e-4],
      ['joined', [clear(bullNoseCutter(0.8, 0.35)), clear(flatCutter(0.9))], 1e-2, 1e-2],
    ];
    fc.assert(
      fc.property(holedStars, (region) => {
        const axis = medialAxis(region);
        for (const [name, steps, planShare, areaShare] of jobs) {
          const cut = carve(axis, steps, { depthMm: 0.9 });
          const walls = carvedWalls(cut, { grainRad: 0.3, diveRad: Math.PI / 2 });
          expect(Math.abs(walls.exposedMm2 / cut.areaMm2 - 1), name).toBeLessThan(planShare);
          const surface = cut.wallAreaMm2 + cut.floorAreaMm2 + cut.ledgeAreaMm2;
          expect(Math.abs(walls.areaMm2 / surface - 1), name).toBeLessThan(areaShare);
        }
      }),
      cases(1),
    );
  });

  test('a V with a flat tip in a slot: two flanks and a level strip, as the difference of two lengths', () => {
    const [flat, half] = [0.15, radians(30)];
    const slot = (length: number): CarvedWalls => {
      const region = cleanFrom([rectangle(0, 0, length, 2)]);
      const cut = carve(medialAxis(region), [vee(60, { tipFlatMm: 2 * flat })], { depthMm: 9 });
      return carvedWalls(cut, { grainRad: Math.PI / 2, diveRad: radians(10) });
    };
    const [long, short] = [slot(30), slot(20)];
    expect((long.areaMm2 - short.areaMm2) / 10).toBeCloseTo((2 * (1 - flat)) / Math.sin(half) + 2 * flat, 9);
    const flanks = ((0.7660444431 + 0.9396926208) * (1 - flat)) / Math.sin(half);
    const level = 2 * flat * Math.sin(radians(10));
    expect((long.exposedMm2 - short.exposedMm2) / 10).toBeCloseTo(flanks + level, 8);
  });

  test('elements divided by length have the same total area and exposure, and the vertical parts of their normals the plan area', () => {
    const axis = medialAxis(one(holedStars, 12));
    for (const steps of [[vee(60)], [clear(flatCutter(0.6))]]) {
      const cut = carve(axis, steps, { depthMm: 0.8 });
      const walls = carvedWalls(cut, { grainRad: 0.4, longestMm: 0.3 });
      const coarse = carvedWalls(cut, { grainRad: 0.4 });
      expect(walls.areaMm2 / coarse.areaMm2).toBeCloseTo(1, 9);
      const down = sum(walls, (k) => -walls.areasMm2[k]! * walls.normals[3 * k + 2]!);
      expect(down / cut.areaMm2).toBeCloseTo(1, 9);
      expect(walls.exposedMm2 / coarse.exposedMm2).toBeCloseTo(1, 9);
      expect(walls.count).toBeGreaterThan(coarse.count);
    }
  });

  test('small elements lie where their surfaces are: each half of a bar has half of walls and floors', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 30, 10)]));
    for (const steps of [
      [clear(flatCutter(3))],
      [clear(ballCutter(3))],
      [vee(90)],
      [vee(60, { tipFlatMm: 0.4 })],
      [vee(60, { tipRadiusMm: 0.3 })],
    ]) {
      for (const depthMm of [1, 20]) {
        const walls = carvedWalls(carve(axis, steps, { depthMm }), { grainRad: 0.2, longestMm: 0.5 });
        for (const side of [0, 1]) {
          for (const floor of [0, 1]) {
            const of = (isHalf: boolean): number =>
              sum(walls, (k) =>
                walls.isFloor[k] === floor && (!isHalf || walls.points[2 * k + side]! < (side === 0 ? 15 : 5))
                  ? walls.areasMm2[k]!
                  : 0,
              );
            expect(Math.abs(2 * of(true) - of(false))).toBeLessThan(0.02 * of(false) + 0.5);
          }
        }
        for (let k = 0; k < walls.count; k++) {
          const [x, y] = [walls.points[2 * k]!, walls.points[2 * k + 1]!];
          expect(Math.min(x, y, 30 - x, 10 - y)).toBeGreaterThan(-1e-9);
        }
      }
    }
  });

  test('elements are on the side of the wall that they are a part of, and a step of the bit is one of them', () => {
    // off the origin, so that nothing is its own mirror image
    const axis = medialAxis(cleanFrom([rectangle(40, 20, 30, 10)]));
    const stepped = profileCutter([
      [0, 0.5],
      [1, 0.5],
      [1, 1.5],
      [3, 1.5],
    ]);
    const angle = { cutter: stepped, way: 'clear' } as const;
    for (const steps of [[vee(90)], [vee(60, { tipRadiusMm: 0.3 })], [clear(flatCutter(1))], [angle]]) {
      const cut = carve(axis, steps, { depthMm: 2 });
      const walls = carvedWalls(cut, { grainRad: 0.2, longestMm: 1 });
      for (let k = 0; k < walls.count; k++) {
        const [nx, ny] = [walls.normals[3 * k]!, walls.normals[3 * k + 1]!];
        const [x, y] = [walls.points[2 * k]! - 55, walls.points[2 * k + 1]! - 25];
        if (Math.hypot(nx, ny) > 1e-9) {
          // normals point into the wood, away from the middle of the bar, and across it for both long walls
          expect(nx * x + ny * y).toBeGreaterThan(0);
          expect(Math.max(Math.abs(x) / 15, Math.abs(y) / 5)).toBeGreaterThan(0.5);
        }
      }
      const surface = cut.wallAreaMm2 + cut.floorAreaMm2 + cut.ledgeAreaMm2;
      expect(walls.areaMm2 / surface).toBeCloseTo(1, 1);
    }
    const walls = carvedWalls(carve(axis, [angle], { depthMm: 2 }), { grainRad: 0 });
    const level = sum(walls, (k) => (walls.normals[3 * k + 2]! < -0.999 ? walls.areasMm2[k]! : 0));
    // floor and step together: the slice at the face
    expect(level).toBeCloseTo(300 - (4 - Math.PI) * 1.5 ** 2, 9);
  });

  test('V walls: ∫E dA equals the slope of the depth along the fibre, summed on a grid', () => {
    const cut = carve(medialAxis(cleanFrom([[0, 0, 9, 0, 9, 3, 4, 3, 4, 8, 0, 8]])), [vee(70)], {
      depthMm: 1.5,
    });
    const grainRad = 0.5;
    const walls = carvedWalls(cut, { grainRad });
    const step = 0.02;
    const [fx, fy] = [Math.cos(grainRad), -Math.sin(grainRad)];
    let total = 0;
    for (let x = -1; x < 10; x += step) {
      for (let y = -1; y < 9; y += step) {
        const h = 1e-4;
        total +=
          Math.abs(cut.depthAt(x + h * fx, y + h * fy) - cut.depthAt(x - h * fx, y - h * fy)) / (2 * h);
      }
    }
    // the grid misses or doubles half a step along edges and ridges
    expect(total * step * step).toBeCloseTo(walls.exposedMm2, 0);
    expect(Math.abs((total * step * step) / walls.exposedMm2 - 1)).toBeLessThan(0.005);
  });
});
