import { reachedOutline } from '@pourproof/cutting';
import {
  arcRingsArea,
  erodedArea,
  medialAxis,
  openedArea,
  polygonFromArcs,
  reachedArea,
  strokeWidths,
  vVolume,
} from '@pourproof/geometry';
import { radians, ringArea, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { holedStars, one } from '../arbitraries.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';
import { variants } from '../support/shapes/region-variants.ts';

/** Equal to 1e-9 of the whole, which the kernel promises on polygons. */
function expectNear(got: number, want: number, whole: number, name: string): void {
  expect(Math.abs(got - want) / whole, `${name}: ${got} for ${want}`).toBeLessThan(1e-9);
}

describe('closed forms', () => {
  test('rectangle 20 × 4: erosion, opening, V volume, narrowest stroke', () => {
    for (const { name, scale, region } of variants(rectangle(1, 2, 20, 4))) {
      const axis = medialAxis(region);
      const area = 80 * scale ** 2;
      for (const r of [0.1, 0.5, 1, 1.5875, 1.999]) {
        expectNear(erodedArea(axis, r * scale), (20 - 2 * r) * (4 - 2 * r) * scale ** 2, area, name);
        expectNear(openedArea(axis, r * scale), (80 - (4 - Math.PI) * r * r) * scale ** 2, area, name);
        expectNear(
          arcRingsArea(reachedOutline(axis, r * scale, r * scale)),
          openedArea(axis, r * scale),
          area,
          name,
        );
      }
      expect(openedArea(axis, 2.001 * scale)).toBe(0);
      expectNear(strokeWidths(axis).narrowestMm ?? 0, 4 * scale, 4 * scale, name);
    }
  });

  test('V volume of a 30 × 4 bar: b²(3a − b)/12 at 90°, times 1/tan 30° at 60°, and with a flat floor', () => {
    for (const { name, scale, region } of variants(rectangle(0, 0, 30, 4))) {
      const axis = medialAxis(region);
      const volume = 114.66666666666667 * scale ** 3;
      expectNear(vVolume(axis, { includedRad: radians(90), depthMm: Infinity }), volume, volume, name);
      const steep = { includedRad: radians(60), depthMm: Infinity };
      expectNear(vVolume(axis, steep), volume / Math.tan(radians(30)), volume, name);
      const t = 1.7 * Math.tan(radians(30));
      const capped = (120 * t - 34 * t * t + (4 * t ** 3) / 3) / Math.tan(radians(30));
      expect(capped).toBeCloseTo(149.45312, 4);
      const cut = { includedRad: radians(60), depthMm: 1.7 * scale };
      expectNear(vVolume(axis, cut), capped * scale ** 3, volume, name);
    }
  });

  test('V volume of a 30 × 4 bar whose depth limit is just the depth of its middle', () => {
    for (const { name, scale, region } of variants(rectangle(0, 0, 30, 4))) {
      const volume = 114.66666666666667 * scale ** 3;
      const axis = medialAxis(region);
      for (const depthMm of [2, 2 - 1e-12, 2 + 1e-12]) {
        expectNear(
          vVolume(axis, { includedRad: Math.PI / 2, depthMm: depthMm * scale }),
          volume,
          volume,
          name,
        );
      }
    }
  });

  test('regular polygons: cones over the inradius, corners left by the bit', () => {
    for (const corners of [3, 4, 5, 6, 7, 12, 101]) {
      for (const { name, scale, region } of variants(regular(corners, 5, 1, 1, 0.3))) {
        const axis = medialAxis(region);
        const area = signedArea(region);
        const inner = 5 * Math.cos(Math.PI / corners) * scale;
        const volume = (area * inner) / 3;
        expectNear(vVolume(axis, { includedRad: Math.PI / 2, depthMm: Infinity }), volume, volume, name);
        const r = 0.6 * inner;
        expectNear(erodedArea(axis, r), area * 0.16, area, name);
        const corner = Math.tan(Math.PI / corners) - Math.PI / corners;
        expectNear(openedArea(axis, r), area - corners * r * r * corner, area, name);
      }
    }
  });

  test('square ring: erosion rounds around the hole by Steiner, and every radius beyond the wall cuts nothing', () => {
    for (const { name, scale, region } of variants(rectangle(0, 0, 10, 10), [rectangle(3, 3, 4, 4)])) {
      const axis = medialAxis(region);
      const area = 84 * scale ** 2;
      for (const r of [0.2, 0.9, 1.4]) {
        const want = (10 - 2 * r) ** 2 - (16 + 16 * r + Math.PI * r * r);
        expectNear(erodedArea(axis, r * scale), want * scale ** 2, area, name);
      }
      expectNear(openedArea(axis, 1.4 * scale), (84 - (4 - Math.PI) * 1.4 ** 2) * scale ** 2, area, name);
    }
  });

  test('L, T and cross of 2 mm bars: a 2 mm bit cuts all but the outer corners', () => {
    const shapes: [string, number[], number][] = [
      ['L', [0, 0, 10, 0, 10, 2, 2, 2, 2, 10, 0, 10], 5],
      ['T', [0, 0, 12, 0, 12, 2, 7, 2, 7, 10, 5, 10, 5, 2, 0, 2], 6],
      ['cross', [4, 0, 6, 0, 6, 4, 10, 4, 10, 6, 6, 6, 6, 10, 4, 10, 4, 6, 0, 6, 0, 4, 4, 4], 8],
    ];
    for (const [shape, ring, corners] of shapes) {
      for (const { name, scale, region } of variants(ring)) {
        const axis = medialAxis(region);
        const area = signedArea(region);
        const r = 0.999;
        const want = area - corners * (1 - Math.PI / 4) * r * r * scale ** 2;
        expectNear(openedArea(axis, r * scale), want, area, `${shape} ${name}`);
        expectNear(strokeWidths(axis).narrowestMm ?? 0, 2 * scale, 2 * scale, `${shape} ${name}`);
      }
    }
  });

  test('a disc of many corners comes to the cone πR³/3 as fast as its corners say', () => {
    const axis = medialAxis(cleanFrom([regular(3000, 5)]));
    const inner = 5 * Math.cos(Math.PI / 3000);
    const want = (1500 * 25 * Math.sin((2 * Math.PI) / 3000) * inner) / 3 / Math.tan(radians(30));
    expect(vVolume(axis, { includedRad: radians(60), depthMm: Infinity })).toBeCloseTo(want, 8);
    expect(want).toBeCloseTo(226.72492, 2);
  });
});

describe('what lies within reach of centres', () => {
  const bar = cleanFrom([rectangle(0, 0, 20, 4)]);

  test('the reach of centres follows Steiner: area + perimeter · q + π q²', () => {
    const axis = medialAxis(bar);
    for (const q of [0, 0.3, 0.7, 1.5]) {
      expect(reachedArea(axis, 1.5, q)).toBeCloseTo(17 + 36 * q + Math.PI * q * q, 10);
    }
    expect(reachedArea(axis, 1.5, 1.5)).toBeCloseTo(openedArea(axis, 1.5), 10);
    expect(() => reachedArea(axis, 1, 1.1)).toThrow(RangeError);
  });
});

describe('laws', () => {
  test('the area eroded is what V volume gains with depth, by differences', () => {
    const axis = medialAxis(one(holedStars, 5));
    for (const depth of [0.1, 0.4, 0.9, 1.3]) {
      const step = 1e-4;
      const at = (d: number): number => vVolume(axis, { includedRad: Math.PI / 2, depthMm: d });
      // the area eroded has bounded slope, so a central difference is right to the order of step²
      expect((at(depth + step) - at(depth - step)) / (2 * step)).toBeCloseTo(erodedArea(axis, depth), 4);
    }
  });

  test('flattened arcs lie inside the true outline, ever closer with the tolerance', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 4)]));
    const outline = reachedOutline(axis, 1.5875, 1.5875);
    let last = 0;
    for (const tolerance of [0.1, 0.01, 0.001, 0.0001]) {
      const area = ringArea(polygonFromArcs(outline, tolerance).coords);
      expect(area).toBeGreaterThan(last);
      expect(area).toBeLessThan(arcRingsArea(outline));
      // four quarter arcs, each short of its true area by at most its length times the tolerance
      expect(arcRingsArea(outline) - area).toBeLessThan(2 * Math.PI * 1.5875 * tolerance);
      last = area;
    }
  });

  test('numbers that mean nothing are refused', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 4)]));
    expect(() => openedArea(axis, -1)).toThrow(RangeError);
    expect(() => erodedArea(axis, Number.NaN)).toThrow(RangeError);
    expect(() => vVolume(axis, { includedRad: 0, depthMm: 1 })).toThrow(RangeError);
    expect(() => vVolume(axis, { includedRad: 1, depthMm: -1 })).toThrow(RangeError);
    expect(() => polygonFromArcs(reachedOutline(axis, 1, 1), 0)).toThrow(RangeError);
  });
});
