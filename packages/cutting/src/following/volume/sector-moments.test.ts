import { describe, expect, test } from 'vitest';
import { type Cutter, radiusAt } from '../../cutters/cutter.ts';
import {
  ballCutter,
  bullNoseCutter,
  profileCutter,
  taperedBallCutter,
  veeCutter,
} from '../../cutters/cutter-makers.ts';
import { adaptiveIntegral } from '../../integrals/adaptive-integral.ts';
import { sectorMoments, slantGain } from './sector-moments.ts';

const CUTTERS: readonly (readonly [string, Cutter])[] = [
  ['V with a rounded tip', veeCutter({ includedRad: 1, diameterMm: 6, tipRadiusMm: 0.4 })],
  ['ball', ballCutter(3)],
  ['bull nose', bullNoseCutter(3, 0.5)],
  ['tapered ball', taperedBallCutter({ tipDiameterMm: 0.5, sideRad: 0.2, diameterMm: 4 })],
  [
    'points',
    profileCutter([
      [0, 0.1],
      [0.2, 0.5],
      [1.4, 1.1],
    ]),
  ],
];
const STEP = 1e-6;

/** Slope of the profile, height for radius, by a difference. */
function slopeAt(cutter: Cutter, height: number): number {
  return (2 * STEP) / (radiusAt(cutter, height + STEP) - radiusAt(cutter, height - STEP));
}

/** ∫ f(height) from the tip's flat to the top, piece by piece, denser at both ends. */
function overHeights(cutter: Cutter, top: number, f: (height: number) => number): number {
  const stops = [0, ...cutter.pieces.map((piece) => piece.toHeightMm).filter((h) => h > 0 && h < top), top];
  let sum = 0;
  for (let k = 0; k + 1 < stops.length; k++) {
    const [from, to] = [stops[k]! + 2 * STEP, stops[k + 1]! - 2 * STEP];
    const denser = (u: number): number => 6 * u * (1 - u) * f(from + (to - from) * u * u * (3 - 2 * u));
    sum += (to - from) * adaptiveIntegral(denser, 0, 1, 1e-9).value;
  }
  return sum;
}

describe.each(CUTTERS)('%s', (_, cutter) => {
  test.each([0, 0.05, 0.6, 1.7])('circles parted where the slope passes %d: integrals by hand', (sink) => {
    for (const top of [0.05, 0.35, 0.49]) {
      const angle = (height: number): number => Math.acos(Math.min(1, sink / slopeAt(cutter, height)));
      const { chordMm2, turnMm2, widthMm2, squareMm2 } = sectorMoments(cutter, top, sink);
      const radius = (height: number): number => radiusAt(cutter, height);
      const chord = overHeights(cutter, top, (h) => 2 * radius(h) * Math.sin(angle(h)));
      const turn = overHeights(cutter, top, (h) => (2 * radius(h) * angle(h)) / slopeAt(cutter, h));
      // differences over a step, and what stretches leave out at their ends, where an arc's radius grows like
      // a root
      expect(Math.abs(chordMm2 - chord)).toBeLessThan(1e-4);
      expect(Math.abs(turnMm2 - turn)).toBeLessThan(6e-3);
      expect(Math.abs(widthMm2 - overHeights(cutter, top, (h) => 2 * radius(h)))).toBeLessThan(1e-4);
      expect(squareMm2).toBeCloseTo(radius(top) ** 2, 12);
    }
  });

  test('slant gain: the same as a sum over small steps of height', () => {
    const top = 0.45;
    const behind = 1.5;
    for (const sink of [0, 0.3]) {
      const count = 200_000;
      let sum = 0;
      let before = 1;
      for (let k = 0; k < count; k++) {
        const height = (top * (k + 0.5)) / count;
        const slope =
          top /
          count /
          (radiusAt(cutter, height + top / count / 2) - radiusAt(cutter, height - top / count / 2));
        const length = Math.hypot(1, slope);
        const parted = Math.sin(Math.acos(Math.min(1, sink / slope)));
        sum += 2 * radiusAt(cutter, height) * (length - before) * (Math.sin(behind) - parted);
        before = length;
      }
      // at a kink the points are those beyond it, in a step across it those in between
      expect(Math.abs(slantGain(cutter, top, sink, behind) - sum)).toBeLessThan(4e-3 + 0.01 * Math.abs(sum));
    }
  });
});
