import { packRings, radians } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { endGrainLength } from './grain-length.ts';
import { wallElements } from './wall-elements.ts';

// edges of the bar: top (facing −y), right (+x), bottom (+y), left (−x)
const bar = packRings([[0, 0, 30, 0, 30, 4, 0, 4]]);

describe('wallElements', () => {
  test('a wall that faces the fibre is end grain, its neighbour side grain', () => {
    const { exposures, normals, floorExposure } = wallElements(bar, { depthMm: 3, grainRad: 0 });
    expect([...exposures]).toEqual([0, 1, 0, 1]);
    expect([...normals.slice(3, 6)].map((n) => n + 0)).toEqual([1, 0, 0]);
    expect(floorExposure).toBe(0);
  });

  test.each([
    [45, 0, Math.SQRT1_2],
    [0, 10, 0.98481],
  ])('azimuth %d° and dive %d°', (azimuth, dive, exposure) => {
    const elements = wallElements(bar, { depthMm: 3, grainRad: radians(azimuth), diveRad: radians(dive) });
    expect(elements.exposures[1]).toBeCloseTo(exposure, 5);
    expect(elements.floorExposure).toBeCloseTo(dive === 0 ? 0 : 0.17365, 5);
  });

  test('on an end-grain board walls are side grain and the floor drinks', () => {
    const elements = wallElements(bar, { depthMm: 3, grainRad: 0, diveRad: Math.PI / 2 });
    for (const exposure of elements.exposures) {
      expect(exposure).toBeLessThan(1e-15);
    }
    expect(elements.floorExposure).toBe(1);
  });

  test('walls of a V of 60° lean, and dive tells its two sides apart', () => {
    const flat = wallElements(bar, { depthMm: 3, grainRad: 0, leanRad: radians(30) });
    expect(flat.exposures[1]).toBeCloseTo(0.86603, 5);
    const diving = wallElements(bar, { depthMm: 3, grainRad: 0, leanRad: radians(30), diveRad: radians(10) });
    expect(diving.exposures[1]).toBeCloseTo(0.76604, 5);
    expect(diving.exposures[3]).toBeCloseTo(0.93969, 5);
    expect(flat.areasMm2[1]).toBeCloseTo((4 * 3) / Math.cos(radians(30)), 12);
  });

  test('upright walls add up to depth times perimeter and depth times the grain length', () => {
    const grainRad = radians(30);
    const elements = wallElements(bar, { depthMm: 3.2, grainRad });
    expect(elements.areaMm2).toBeCloseTo(68 * 3.2, 10);
    expect(elements.exposedMm2).toBeCloseTo(endGrainLength(bar, grainRad) * 3.2, 10);
  });

  test('settings out of range are refused', () => {
    expect(() => wallElements(bar, { depthMm: -1, grainRad: 0 })).toThrow(RangeError);
    expect(() => wallElements(bar, { depthMm: 1, grainRad: 0, diveRad: 2 })).toThrow(RangeError);
    expect(() => wallElements(bar, { depthMm: 1, grainRad: 0, leanRad: 1.6 })).toThrow(RangeError);
  });
});
