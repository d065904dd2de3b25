import { booleans, resolveRegions } from '@pourproof/arrangement';
import { reachedOutline } from '@pourproof/cutting';
import {
  erodedArea,
  type MedialAxis,
  medialAxis,
  openedArea,
  polygonFromArcs,
  strokeWidths,
  vVolume,
} from '@pourproof/geometry';
import { type CleanRegion, perimeter, radians, ringCoords, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, letters } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';
import { variants } from '../support/shapes/region-variants.ts';
import { stadium, vee } from '../support/shapes/stroke-shapes.ts';

/** Share of the whole that the kernel promises on polygons. */
const PROMISED = 1e-9;

const largestClearance = (axis: MedialAxis): number => axis.nodeR.reduce((a, b) => Math.max(a, b), 0);

/** What stays of a region at r, as long as no two of its offset edges have met: area − perimeter · r + turns · r² (Steiner). */
function steiner(region: CleanRegion): { area: number; perimeter: number; turns: number } {
  let turns = 0;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringCoords(region, k);
    const n = ring.length / 2;
    for (let i = 0; i < n; i++) {
      const [h, j] = [(i + n - 1) % n, (i + 1) % n];
      const [ax, ay] = [ring[2 * i] - ring[2 * h], ring[2 * i + 1] - ring[2 * h + 1]];
      const [bx, by] = [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
      const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
      // strips beside a corner overlap by a kite, beside a reflex point a sector lies between them
      turns += turn > 0 ? Math.tan(turn / 2) : turn / 2;
    }
  }
  return { area: signedArea(region), perimeter: perimeter(region), turns };
}

/** Shape, holes, and a radius up to which no two of its offset edges meet. */
const SHAPES: readonly (readonly [name: string, outer: number[], holes: number[][], clearMm: number])[] = [
  ['square', rectangle(1, 2, 7, 7), [], 3.5],
  ['scalene triangle', [0, 0, 13, 1, 4, 9], [], 2.6],
  ['annulus of many corners', regular(40, 9), [regular(40, 5, 0, 0, 0.05)], 1.9],
  ['L', [0, 0, 10, 0, 10, 2, 2, 2, 2, 10, 0, 10], [], 1],
  ['T', [0, 0, 12, 0, 12, 2, 7, 2, 7, 10, 5, 10, 5, 2, 0, 2], [], 1],
  ['cross', [4, 0, 6, 0, 6, 4, 10, 4, 10, 6, 6, 6, 6, 10, 4, 10, 4, 6, 0, 6, 0, 4, 4, 4], [], 1],
  ['two strokes at 40°', vee(40, 14, 2), [], 0.99],
  ['two strokes at 97°', vee(97, 14, 2), [], 0.99],
  ['frame in a frame', rectangle(0, 0, 30, 20), [rectangle(3, 3, 10, 14), rectangle(17, 3, 10, 14)], 1.5],
];

describe.each(SHAPES)('%s', (_name, outer, holes, clearMm) => {
  test('erodes by Steiner’s formula, and its V volume is that formula’s integral', () => {
    for (const { name, scale, region } of variants(outer, holes)) {
      const axis = medialAxis(region);
      const { area, perimeter: length, turns } = steiner(region);
      for (const share of [0.01, 0.2, 0.5, 0.8, 0.99]) {
        const r = share * clearMm * scale;
        expect(Math.abs(erodedArea(axis, r) - (area - length * r + turns * r * r)) / area, name).toBeLessThan(
          PROMISED,
        );
        const volume = area * r - (length * r * r) / 2 + (turns * r ** 3) / 3;
        for (const deg of [30, 60, 90, 120]) {
          const slope = Math.tan(radians(deg / 2));
          const got = vVolume(axis, { includedRad: radians(deg), depthMm: r / slope });
          expect(Math.abs(got * slope - volume) / (area * r), `${name}, ${deg}°`).toBeLessThan(PROMISED);
        }
      }
    }
  });

  test('measures the same however it lies', () => {
    const measures = (region: CleanRegion, scale: number): number[] => {
      const axis = medialAxis(region);
      const top = largestClearance(axis);
      return [0.1, 0.45, 0.7, 0.93].flatMap((share) => [
        erodedArea(axis, share * top) / scale ** 2,
        openedArea(axis, share * top) / scale ** 2,
        vVolume(axis, { includedRad: 1, depthMm: share * top }) / scale ** 3,
        vVolume(axis, { includedRad: 1, depthMm: Infinity }) / scale ** 3,
        (strokeWidths(axis).narrowestMm ?? 0) / scale,
      ]);
    };
    const [first, ...others] = [...variants(outer, holes)].map((each) => ({
      name: each.name,
      all: measures(each.region, each.scale),
    }));
    for (const { name, all } of others) {
      all.forEach((value, k) => {
        expect(Math.abs(value / first.all[k] - 1), `${name}, measure ${k}`).toBeLessThan(PROMISED);
      });
    }
  });
});

test('a stadium with ends of m flats: a segment grown by a polygon, whose inradius is all that erodes', () => {
  for (const m of [8, 24, 100]) {
    const [length, inner] = [9, 1.7];
    const corner = Array.from({ length: m }, (_, k) => ((2 * k + 1) * Math.PI) / m - Math.PI / 2);
    const outer = corner.flatMap((t, k) => [
      (k < m / 2 ? length : 0) + (inner / Math.cos(Math.PI / m)) * Math.cos(t),
      (inner / Math.cos(Math.PI / m)) * Math.sin(t),
    ]);
    const unit = m * Math.tan(Math.PI / m);
    for (const { name, scale, region } of variants(outer)) {
      const axis = medialAxis(region);
      const area = 2 * length * inner + unit * inner ** 2;
      const volume = length * inner ** 2 + (unit * inner ** 3) / 3;
      const whole = vVolume(axis, { includedRad: Math.PI / 2, depthMm: Infinity });
      expect(Math.abs(whole / (volume * scale ** 3) - 1), name).toBeLessThan(PROMISED);
      const opened = area - 1.2 ** 2 * (unit - Math.PI);
      expect(Math.abs(openedArea(axis, 1.2 * scale) / (opened * scale ** 2) - 1), name).toBeLessThan(
        PROMISED,
      );
      const left = 2 * length * (inner - 1.2) + unit * (inner - 1.2) ** 2;
      expect(Math.abs(erodedArea(axis, 1.2 * scale) / (left * scale ** 2) - 1), name).toBeLessThan(PROMISED);
      expect(strokeWidths(axis).narrowestMm! / scale).toBeCloseTo(2 * inner, 9);
    }
  }
});

/** Polygons of all families, now and then a letter, and a shape with arcs. */
const regions: fc.Arbitrary<() => CleanRegion | Promise<CleanRegion>> = fc.oneof(
  { weight: 20, arbitrary: anyPolygon.map((region) => () => region) },
  {
    weight: 2,
    arbitrary: letters.map(
      ({ text, face, capHeightMm }) =>
        () =>
          lettered(text, face, capHeightMm, 0.01),
    ),
  },
  { weight: 1, arbitrary: fc.constant(() => cleanFrom([stadium(9, 3, 0.01)])) },
);

describe('laws on random polygons and letters', () => {
  test('V volume times tan(A/2) is the same at every angle, and grows with depth by the area eroded', async () => {
    await fc.assert(
      fc.asyncProperty(regions, async (make) => {
        const region = await make();
        const axis = medialAxis(region);
        const top = largestClearance(axis);
        const full = vVolume(axis, { includedRad: Math.PI / 2, depthMm: Infinity });
        for (const deg of [15, 40, 60, 118, 150]) {
          const slope = Math.tan(radians(deg / 2));
          const volume = vVolume(axis, { includedRad: radians(deg), depthMm: Infinity });
          expect(Math.abs((volume * slope) / full - 1)).toBeLessThan(PROMISED);
          const half = vVolume(axis, { includedRad: radians(deg), depthMm: (0.5 * top) / slope });
          const same = vVolume(axis, { includedRad: Math.PI / 2, depthMm: 0.5 * top });
          expect(Math.abs((half * slope - same) / full)).toBeLessThan(PROMISED);
        }
        const at = (depthMm: number): number => vVolume(axis, { includedRad: Math.PI / 2, depthMm });
        for (const share of [0.05, 0.3, 0.6, 0.9]) {
          // between two depths the area eroded falls, so what is gained lies between both areas
          const [low, high] = [share * top, (share + 1e-4) * top];
          const gained = (at(high) - at(low)) / (high - low);
          const slack = (1e-12 * full) / (high - low);
          expect(gained).toBeLessThanOrEqual(erodedArea(axis, low) + slack);
          expect(gained).toBeGreaterThanOrEqual(erodedArea(axis, high) - slack);
        }
      }),
      cases(100),
    );
  });

  test('opening again takes nothing, and what is opened lies inside the artwork and inside what a smaller bit opens', async () => {
    const toleranceMm = 1e-4;
    await fc.assert(
      fc.asyncProperty(regions, async (make) => {
        const region = await make();
        const axis = medialAxis(region);
        const top = largestClearance(axis);
        let before: CleanRegion = region;
        for (const share of [0.2, 0.5, 0.8]) {
          const radius = share * top;
          const arcs = polygonFromArcs(reachedOutline(axis, radius, radius), toleranceMm);
          const { region: opened } = resolveRegions([{ ...arcs, fillRule: 'nonzero' }]);
          const area = signedArea(opened);
          const strip = toleranceMm * perimeter(opened);
          // chords lie inside their arcs by the tolerance: opening by that much less takes nothing but the points between chords
          expect(Math.abs(openedArea(medialAxis(opened), radius - toleranceMm) - area)).toBeLessThan(strip);
          const outside = signedArea(booleans(opened, before, 'subtract'));
          expect(outside).toBeLessThan(before === region ? 1e-6 : strip);
          before = opened;
        }
      }),
      cases(100),
    );
  });
});
