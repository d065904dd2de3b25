import { resolveRegions } from '@pourproof/arrangement';
import { type Carving, carve, carvedWalls, veeCutter } from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import { packRings, radians } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastAlong, sidewaysExposure } from './wall-exposure.ts';

const slope = (diveDeg: number, angleDeg: number) => ({
  diveRad: radians(diveDeg),
  leanRad: radians(angleDeg / 2),
});

describe('a wall of a 60° V', () => {
  test.each([
    ['across the fibres', 0, 1, 0.8660254],
    ['along them', 0, 0, 0],
    ['at 45° to them', 0, Math.SQRT1_2, 0.6123724],
    ['where they dive by 10°, on the side to which they rise', 10, 1, 0.7660444],
    ['and on the other', 10, -1, 0.9396926],
    ['on end grain', 90, 1, 0],
  ])('%s has its closed form', (_, diveDeg, along, exposure) => {
    expect(sidewaysExposure(along, slope(diveDeg, 60))).toBeCloseTo(exposure, 7);
  });

  test('is what the elements of the cut in three dimensions say', () => {
    // 30 × 4 mm: end walls face ±x, side walls ±y
    const bar = resolveRegions([{ ...packRings([[0, 0, 30, 0, 30, 4, 0, 4]]), fillRule: 'nonzero' }]).region;
    const vee = veeCutter({ includedRad: radians(60), diameterMm: 12 });
    const carving: Carving = carve(medialAxis(bar), [{ cutter: vee, way: 'follow' }], { depthMm: 10 });
    for (const diveDeg of [0, 10, 25]) {
      const { count, normals, exposures } = carvedWalls(carving, { grainRad: 0, diveRad: radians(diveDeg) });
      let ends = 0;
      for (let k = 0; k < count; k++) {
        const along = (normals[3 * k] as number) / Math.cos(radians(30));
        const exposure = sidewaysExposure(along, slope(diveDeg, 60));
        if (Math.abs(along) > 0.5) {
          ends++;
          // at 25° an end wall stands all but square to the fibres, which reach less far across the face
          expect(exposure).toBeCloseTo(Math.min(exposures[k] as number, Math.cos(radians(diveDeg))), 9);
        } else {
          // what side walls drink runs down, under the face
          expect(exposure).toBeCloseTo(0, 9);
        }
      }
      expect(ends).toBeGreaterThanOrEqual(2);
    }
  });
});

test('an upright wall has the fibre’s part in the face times its exposure there', () => {
  expect(sidewaysExposure(-0.5, slope(10, 0))).toBeCloseTo(0.5 * 0.9848078, 7);
  expect(sidewaysExposure(0.5, slope(10, 0))).toBeCloseTo(0.5 * 0.9848078, 7);
});

test('streaks that run back under a flat wall stain nothing beside it, and none reaches farther than across the face', () => {
  // fibres at 45° are steeper than a wall of 120°, which rises by 30°
  expect(sidewaysExposure(1, slope(45, 120))).toBe(0);
  expect(sidewaysExposure(-1, slope(45, 120))).toBeCloseTo(Math.SQRT1_2, 12);
});

test('the least product reaches the exposure, and less of it does not', () => {
  const any = fc.record({
    diveDeg: fc.double({ min: 0, max: 80, noNaN: true }),
    angleDeg: fc.double({ min: 0, max: 150, noNaN: true }),
    exposure: fc.double({ min: 0.01, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(any, ({ diveDeg, angleDeg, exposure }) => {
      const wall = slope(diveDeg, angleDeg);
      const { rising, falling } = leastAlong(exposure, wall);
      for (const [sign, least] of [
        [1, rising],
        [-1, falling],
      ] as const) {
        expect(sidewaysExposure(sign * least, wall)).toBeCloseTo(exposure, 9);
        expect(sidewaysExposure(sign * least * 0.99, wall)).toBeLessThan(exposure);
      }
    }),
  );
  expect(leastAlong(0.5, slope(90, 60)).rising).toBe(Number.POSITIVE_INFINITY);
});
