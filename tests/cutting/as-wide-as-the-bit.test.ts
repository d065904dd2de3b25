import { resolveRegions } from '@pourproof/arrangement';
import { carve, clearingPath, flatCutter, followingPath, reachedOutline } from '@pourproof/cutting';
import {
  arcRingsArea,
  arcRingsLength,
  erodedArea,
  leftStanding,
  type MedialAxis,
  medialAxis,
  narrowStretches,
  openedArea,
  reachedArea,
  strokeWidths,
} from '@pourproof/geometry';
import { type CleanRegion, packRings, signedArea, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { polygonFamilies } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { pathLength } from '../support/oracles/path-length.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';
import { stadium, vee } from '../support/shapes/stroke-shapes.ts';

/** Strokes at odd angles, along which rounding makes clearances differ in their last digits. */
const WIDTHS_MM = [1, 1.5875, 2, 3, 3.175];

/**
 * The cut area by every function that computes it; next to the radius it changes by no more than rounding.
 */
function expectOneCut(region: CleanRegion, radius: number, name: string): number {
  const axis = medialAxis(region);
  const whole = signedArea(region);
  const area = openedArea(axis, radius);
  // the opening by a little less and by a little more: a stroke as wide as the bit is cut
  expect(area, name).toBeLessThanOrEqual(openedArea(axis, radius * (1 - 1e-7)) + 1e-6 * whole);
  expect(area, name).toBeGreaterThanOrEqual(openedArea(axis, radius * (1 + 1e-7)) - 1e-6 * whole);
  expect(Math.abs(arcRingsArea(reachedOutline(axis, radius, radius)) - area) / whole, name).toBeLessThan(
    1e-8,
  );
  const { pieces, facetAreaMm2 } = leftStanding(axis, radius, 0.001);
  const standing = pieces.reduce((sum, piece) => sum + piece.areaMm2, facetAreaMm2);
  expect(Math.abs(whole - area - standing) / whole, name).toBeLessThan(1e-8);
  const half = reachedArea(axis, radius, radius / 2);
  expect(Math.abs(arcRingsArea(reachedOutline(axis, radius, radius / 2)) - half) / whole, name).toBeLessThan(
    1e-8,
  );
  const carved = carve(axis, [{ cutter: flatCutter(2 * radius), way: 'clear' }], { depthMm: 2 });
  expect(Math.abs(carved.areaMm2 - area) / whole, name).toBeLessThan(1e-8);
  return area;
}

const turned = (ring: readonly number[], rad: number): number[] => {
  const [c, s] = [Math.cos(rad), Math.sin(rad)];
  return [...transformRings([c, s, -s, c, 7.3 * rad, 3.3], cleanFrom([ring])).coords];
};

test('strokes exactly as wide as the bit are cut along all their length, in any direction', () => {
  for (let k = 0; k < 60; k++) {
    const w = WIDTHS_MM[k % WIDTHS_MM.length];
    const r = w / 2;
    const rad = 0.37 * k;
    const round = (4 - Math.PI) * r * r;
    const bar = cleanFrom([turned(rectangle(0, 0, 20, w), rad)]);
    expect(expectOneCut(bar, r, `bar ${k}`)).toBeCloseTo(20 * w - round, 6);
    const elbow = cleanFrom([turned([0, 0, 14, 0, 14, w, w, w, w, 14, 0, 14], rad)]);
    // two square ends, and the outer corner
    expect(expectOneCut(elbow, r, `elbow ${k}`)).toBeCloseTo(28 * w - w * w - 1.25 * round, 6);
    const frame = cleanFrom(
      [turned(rectangle(0, 0, 20, 12), rad)],
      [turned(rectangle(w, w, 20 - 2 * w, 12 - 2 * w), rad)],
    );
    expect(expectOneCut(frame, r, `frame ${k}`)).toBeCloseTo(240 - (20 - 2 * w) * (12 - 2 * w) - round, 6);
    const crossed = [rectangle(0, 0, 20, w), rectangle(5, -5, w, 12), rectangle(12, -5, w, 12)];
    const { region } = resolveRegions([
      { ...packRings(crossed.map((ring) => turned(ring, rad))), fillRule: 'nonzero' },
    ]);
    expectOneCut(region, r, `bars that cross ${k}`);
    expectOneCut(cleanFrom([turned(vee(40 + k, 14, w), rad)]), r, `two strokes at an angle ${k}`);
    expectOneCut(cleanFrom([turned(stadium(20, w, 0.005), rad)]), r, `stadium ${k}`);
  }
});

test('their paths are those of a slightly narrower bit, or of a slightly deeper limit', () => {
  for (let k = 0; k < 30; k++) {
    const w = WIDTHS_MM[k % WIDTHS_MM.length];
    for (const ring of [rectangle(0, 0, 20, w), vee(50, 14, w), stadium(20, w, 0.005)]) {
      const axis = medialAxis(cleanFrom([turned(ring, 0.37 * k)]));
      const cleared = (diameterMm: number): number =>
        pathLength(clearingPath(axis, { diameterMm, stepoverMm: w / 4, depthMm: 1 }));
      // there and back along the middle, and the sliver around it that the narrower bit has
      for (const diameterMm of [w, 2 * w * 0.375]) {
        expect(Math.abs(cleared(diameterMm) / cleared(diameterMm * (1 - 1e-6)) - 1), `${k}`).toBeLessThan(
          1e-3,
        );
      }
      const followed = (depthMm: number): number =>
        followingPath(axis, { includedRad: Math.PI / 2, depthMm }).lengthMm;
      expect(Math.abs(followed(w / 2) / followed((w / 2) * (1 + 1e-6)) - 1), `${k}`).toBeLessThan(1e-3);
    }
  }
});

test('a stroke exactly as wide as a limit is not narrower than it, in any direction', () => {
  for (let k = 0; k < 60; k++) {
    const w = WIDTHS_MM[k % WIDTHS_MM.length];
    for (const ring of [rectangle(0, 0, 20, w), [0, 0, 14, 0, 14, w, w, w, w, 14, 0, 14]]) {
      const axis = medialAxis(cleanFrom([turned(ring, 0.37 * k)]));
      expect(narrowStretches(axis, w), `${k}`).toEqual([]);
      const widths = strokeWidths(axis);
      expect(widths.lengthNarrowerThan(w), `${k}`).toBe(0);
      expect(widths.histogram([0, w, 2 * w])[1], `${k}`).toBeCloseTo(widths.lengthMm, 9);
    }
  }
});

test('the offset curve at exactly half a width is there and back along the middle, in any direction; beyond it there is none', () => {
  for (let k = 0; k < 60; k++) {
    const w = WIDTHS_MM[k % WIDTHS_MM.length];
    for (const [ring, middle] of [
      [rectangle(0, 0, 20, w), 20 - w],
      [rectangle(0, 0, w, w), 0],
    ] as const) {
      const axis = medialAxis(cleanFrom([turned(ring, 0.37 * k)]));
      const curve = reachedOutline(axis, w / 2, 0);
      expect(curve.ringEnds.length, `${k}`).toBe(1);
      expect(arcRingsLength(curve), `${k}`).toBeCloseTo(2 * middle, 6);
      expect(Math.abs(arcRingsArea(curve)), `${k}`).toBeLessThan(1e-6);
      expect(erodedArea(axis, w / 2), `${k}`).toBeLessThan(1e-6);
      expect(reachedOutline(axis, (w / 2) * (1 + 1e-7), 0).ringEnds.length, `${k}`).toBe(0);
    }
  }
});

test('a bit exactly as wide as the artwork is somewhere makes one cut', () => {
  const radii = ({ nodeR }: MedialAxis): number[] => {
    const sorted = [...nodeR].filter((r) => r > 0).toSorted((a, b) => a - b);
    return [0.4, 0.7, 0.9, 1].map(
      (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))],
    );
  };
  for (const [family, polygons] of Object.entries(polygonFamilies)) {
    fc.assert(
      fc.property(polygons, (region) => {
        for (const radius of radii(medialAxis(region))) {
          expectOneCut(region, radius, `${family}, radius ${radius}`);
        }
      }),
      cases(30),
    );
  }
});

test('three discs that enclose what no wall belongs to make one cut', () => {
  const region = cleanFrom(
    [[7.5, 0, 3.75, 6.495, -3.75, 6.495, -7.5, 0, -3.75, -6.495, 3.75, -6.495]],
    [
      [3.98374, 0.666086, 2.492248, 1.219547, 4.081979, 1.177125],
      [-2.327143, 2.613515, -3.686509, 2.403972, -2.71585, 4.19903],
      [
        -0.814004, -3.86856, -0.078432, -5.427852, -1.501629, -5.003921, -2.682225, -4.42119, -1.743573,
        -3.464731, -1.372533, -1.929178, -0.839164, -3.548605,
      ],
    ],
  );
  for (const radius of [2.05, 2.4, 2.83, 2.88]) {
    expectOneCut(region, radius, `radius ${radius}`);
  }
});
