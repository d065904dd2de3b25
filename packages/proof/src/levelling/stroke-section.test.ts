import {
  ballCutter,
  bullNoseCutter,
  type Cutter,
  flatCutter,
  profileCutter,
  radiusAt,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import {
  filmHeight,
  heightOfWidth,
  poolHeight,
  sectionArea,
  sectionSurface,
  sectionWidth,
} from './stroke-section.ts';

const CUTTERS: Readonly<Record<string, Cutter>> = {
  flat: flatCutter(2),
  ball: ballCutter(2),
  'bull nose': bullNoseCutter(2, 0.4),
  vee: veeCutter({ includedRad: 1, diameterMm: 6 }),
  'vee with a flat': veeCutter({ includedRad: 1, diameterMm: 6, tipFlatMm: 0.3 }),
  'vee with a round': veeCutter({ includedRad: 1, diameterMm: 6, tipRadiusMm: 0.3 }),
  taper: taperedBallCutter({ tipDiameterMm: 0.5, sideRad: 0.1, diameterMm: 3 }),
  stepped: profileCutter([
    [0, 0.4],
    [0.5, 0.4],
    [0.5, 0.7],
    [1.5, 1.1],
  ]),
};

/** Definition: strips of the section's width, and chords of its walls. */
function byStrips(cutter: Cutter, depthMm: number, besideMm: number): { area: number; surface: number } {
  const strips = 20_000;
  const step = depthMm / strips;
  let area = 0;
  let surface = 2 * (besideMm + radiusAt(cutter, 0));
  for (let k = 0; k < strips; k++) {
    area += 2 * step * (besideMm + radiusAt(cutter, (k + 0.5) * step));
    surface += 2 * Math.hypot(step, radiusAt(cutter, (k + 1) * step) - radiusAt(cutter, k * step));
  }
  return { area, surface };
}

test.each(Object.entries(CUTTERS))(
  'area and surface of %s are what strips and chords add up to',
  (_, cutter) => {
    for (const [depthMm, besideMm] of [
      [0.3, 0],
      [2.2, 0],
      [2.2, 1.5],
    ] as const) {
      const section = { widthMm: 2 * (radiusAt(cutter, depthMm) + besideMm), depthMm, cutter };
      const { area, surface } = byStrips(cutter, depthMm, besideMm);
      // one strip at a jump of the radius is off by its own height; chords of an arc that starts level by
      // less
      expect(sectionArea(section)).toBeCloseTo(area, 3);
      expect(Math.abs(sectionSurface(section) - surface)).toBeLessThan(2e-3);
    }
  },
);

test('a pool holds the area that it was given, a height has the width that leads to it', () => {
  const any = fc.record({
    name: fc.constantFrom(...Object.keys(CUTTERS)),
    depthMm: fc.double({ min: 0.05, max: 4, noNaN: true }),
    besideMm: fc.double({ min: 0, max: 3, noNaN: true }),
    part: fc.double({ min: 1e-6, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(any, ({ name, depthMm, besideMm, part }) => {
      const cutter = CUTTERS[name] as Cutter;
      const section = { widthMm: 2 * (radiusAt(cutter, depthMm) + besideMm), depthMm, cutter };
      const height = poolHeight(section, part * sectionArea(section));
      const lower = { widthMm: sectionWidth(section, height), depthMm: height, cutter };
      expect(sectionArea(lower)).toBeCloseTo(part * sectionArea(section), 9);
      // more than there is room for stands at the brim
      expect(poolHeight(section, 2 * sectionArea(section))).toBe(depthMm);
      const width = sectionWidth(section, part * depthMm);
      expect(sectionWidth(section, heightOfWidth(section, width))).toBeCloseTo(width, 9);
      expect(heightOfWidth(section, width)).toBeLessThanOrEqual(part * depthMm + 1e-9);
    }),
    cases(300),
  );
});

test('wider than the face a section is nowhere, and as wide as its floor everywhere', () => {
  const section = { widthMm: 3, depthMm: 2, cutter: flatCutter(2) };
  expect(heightOfWidth(section, 3.1)).toBe(Number.POSITIVE_INFINITY);
  expect(heightOfWidth(section, 3)).toBe(0);
  expect(poolHeight(section, 0)).toBe(0);
});

test('a film stands t/sin(A/2) over the point of a V, t over a floor wide enough, and no higher than the groove', () => {
  const vee = veeCutter({ includedRad: Math.PI / 3, diameterMm: 6 });
  const groove = { widthMm: 2 * 2 * Math.tan(Math.PI / 6), depthMm: 2, cutter: vee };
  expect(filmHeight(groove, 0.1)).toBeCloseTo(0.2, 3);
  expect(filmHeight(groove, 0.3)).toBeCloseTo(0.6, 2);
  expect(filmHeight(groove, 5)).toBe(2);
  expect(filmHeight(groove, 0)).toBe(0);
  expect(filmHeight({ widthMm: 6, depthMm: 2, cutter: flatCutter(2) }, 0.3)).toBeCloseTo(0.3, 12);
});

test.each(Object.entries(CUTTERS))(
  'the film of a %s reaches as high as it does at some height',
  (_, cutter) => {
    const steps = 4096;
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0.01, max: 1.5, noNaN: true }),
        (depthMm, besideMm, filmMm) => {
          const section = { widthMm: 2 * (besideMm + radiusAt(cutter, depthMm)), depthMm, cutter };
          let highest = Math.min(depthMm, filmMm);
          for (let k = 0; k <= steps; k++) {
            const at = (depthMm * k) / steps;
            const half = sectionWidth(section, at) / 2;
            if (half <= filmMm) {
              highest = Math.max(highest, Math.min(depthMm, at + Math.sqrt(filmMm ** 2 - half ** 2)));
            }
          }
          const height = filmHeight(section, filmMm);
          expect(height).toBeGreaterThanOrEqual(highest - 1e-9);
          // nowhere between two of the steps does it rise by more than the root of one
          expect(height).toBeLessThanOrEqual(highest + Math.sqrt((2 * filmMm * depthMm) / steps));
        },
      ),
      cases(30),
    );
  },
);
