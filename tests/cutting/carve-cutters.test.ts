import {
  ballCutter,
  bullNoseCutter,
  carve,
  flatCutter,
  heightAt,
  profileCutter,
  radiusAt,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import { medialAxis, openedArea } from '@pourproof/geometry';
import { radians } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { clear, veeOf } from '../support/carve-steps.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';

const vee = veeOf(20);

describe('cutters', () => {
  const all = [
    flatCutter(3),
    ballCutter(3),
    bullNoseCutter(3, 0.5),
    veeCutter({ includedRad: 1, diameterMm: 6 }),
    veeCutter({ includedRad: 1, diameterMm: 6, tipFlatMm: 0.2 }),
    veeCutter({ includedRad: 1, diameterMm: 6, tipRadiusMm: 0.2 }),
    taperedBallCutter({ tipDiameterMm: 1, sideRad: 0.1, diameterMm: 4 }),
    profileCutter([
      [0, 0.3],
      [1, 0.3],
      [1, 1],
      [4, 2],
    ]),
  ];

  test('height and radius are inverse to each other and do not decrease', () => {
    for (const cutter of all) {
      let before = 0;
      for (let k = 0; k <= 200; k++) {
        const radius = (cutter.diameterMm / 2) * (k / 200);
        const height = heightAt(cutter, radius);
        expect(height).toBeGreaterThanOrEqual(before);
        expect(radiusAt(cutter, height)).toBeGreaterThanOrEqual(radius - 1e-9);
        if (height > 0) {
          expect(radiusAt(cutter, height * (1 - 1e-9))).toBeLessThanOrEqual(radius + 1e-7);
        }
        before = height;
      }
      expect(heightAt(cutter, cutter.diameterMm)).toBe(Infinity);
      expect(radiusAt(cutter, 1e9)).toBe(cutter.diameterMm / 2);
    }
  });

  test('a rounded tip is tangent to the flanks', () => {
    const side = radians(30);
    const cutter = veeCutter({ includedRad: 2 * side, diameterMm: 6, tipRadiusMm: 0.4 });
    const touch = 0.4 * (1 - Math.sin(side));
    const slope = (h: number): number => (radiusAt(cutter, h + 1e-7) - radiusAt(cutter, h)) / 1e-7;
    expect(radiusAt(cutter, touch)).toBeCloseTo(0.4 * Math.cos(side), 12);
    expect(slope(touch - 2e-7)).toBeCloseTo(Math.tan(side), 4);
    expect(slope(touch + 2e-7)).toBeCloseTo(Math.tan(side), 4);
  });

  test('the tip of a profile that begins with a needle is at its foot', () => {
    const needle = profileCutter([
      [0, 0],
      [5, 0],
      [6, 3],
    ]);
    expect(heightAt(needle, 0)).toBe(0);
    expect(heightAt(needle, 1.5)).toBeCloseTo(5.5, 12);
    expect(radiusAt(needle, 4)).toBe(0);
  });

  test('a profile whose first point is no tip is refused for that', () => {
    for (const first of [
      [0, -1],
      [0, Infinity],
      [0, Number.NaN],
      [0.1, 0],
    ] as const) {
      expect(() => profileCutter([first, [5, 3]])).toThrow(
        new RangeError('the profile must start at height 0 with a radius of 0 or more'),
      );
    }
  });

  test('sizes that make no cutter, or no step, are refused', () => {
    for (const misuse of [
      () => flatCutter(0),
      () => ballCutter(Number.NaN),
      () => flatCutter(3, { cuttingLengthMm: 0 }),
      () => bullNoseCutter(3, 1.5),
      () => bullNoseCutter(3, 0),
      () => veeCutter({ includedRad: Math.PI, diameterMm: 6 }),
      () => veeCutter({ includedRad: 1, diameterMm: 6, tipFlatMm: 6 }),
      () => veeCutter({ includedRad: 1, diameterMm: 6, tipFlatMm: -1 }),
      () => veeCutter({ includedRad: 1, diameterMm: 6, tipFlatMm: 0.1, tipRadiusMm: 0.1 }),
      () => veeCutter({ includedRad: 1, diameterMm: 6, tipRadiusMm: 4 }),
      () => taperedBallCutter({ tipDiameterMm: 1, sideRad: 0, diameterMm: 4 }),
      () => profileCutter([[0, 1]]),
      () =>
        profileCutter([
          [0.1, 0],
          [1, 1],
        ]),
      () =>
        profileCutter([
          [0, 1],
          [1, 0.5],
        ]),
      () =>
        profileCutter([
          [0, 0],
          [1, 0],
        ]),
      () => radiusAt(flatCutter(1), -1),
      () => heightAt(flatCutter(1), -1),
    ]) {
      expect(misuse).toThrow(RangeError);
    }
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 3, 3)]));
    for (const misuse of [
      () => carve(axis, [], { depthMm: 1 }),
      () => carve(axis, [clear(flatCutter(1))], { depthMm: 0 }),
      () => carve(axis, [clear(flatCutter(1), -1)], { depthMm: 1 }),
      () => carve(axis, [clear(flatCutter(1))], { depthMm: 1, toleranceMm: 0 }),
      () => carve(axis, [{ cutter: flatCutter(1), way: 'follow' }], { depthMm: 1 }),
      () => carve(axis, [{ cutter: all[7]!, way: 'follow' }], { depthMm: 3 }),
      () => carve(axis, [clear(flatCutter(1))], { depthMm: 1 }).sliceArea(-1),
    ]) {
      expect(misuse).toThrow(RangeError);
    }
  });

  test('an empty artwork, and cutters that fit nowhere, give an empty cut', () => {
    const none = carve(medialAxis(cleanFrom([])), [vee(60), clear(flatCutter(1))], { depthMm: 1 });
    const wide = carve(medialAxis(cleanFrom([rectangle(0, 0, 3, 3)])), [clear(flatCutter(4))], {
      depthMm: 1,
    });
    for (const cut of [none, wide]) {
      expect([cut.areaMm2, cut.volumeMm3, cut.floorAreaMm2, cut.wallAreaMm2, cut.depthAt(1, 1)]).toEqual([
        0, 0, 0, 0, 0,
      ]);
      expect(cut.outline.ringEnds.length).toBe(0);
      expect(cut.perCutter.flatMap((step) => step.places)).toEqual([]);
    }
    expect(openedArea(medialAxis(cleanFrom([])), 1)).toBe(0);
  });
});
