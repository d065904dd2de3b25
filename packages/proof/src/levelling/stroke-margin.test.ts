import { ballCutter, flatCutter, taperedBallCutter, veeCutter } from '@pourproof/cutting';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import {
  clearShare,
  levelledStroke,
  marginOf,
  type StrokeMargin,
  type StrokeNeeds,
  type StrokeShop,
} from './stroke-margin.ts';
import type { StrokeSection } from './stroke-section.ts';

const BARE = { filmMm: 0, shrinkagePct: 0, shallowByMm: 0 };
const NOTHING = { narrowestMm: 0, shallowestMm: 0, faintMm: 0, faintWidthMm: 0 };
const strokeMargin = (section: StrokeSection, shop: StrokeShop, needs: StrokeNeeds): StrokeMargin =>
  marginOf(levelledStroke(section, shop, 0), section, shop, needs);
const rad = (deg: number): number => (deg * Math.PI) / 180;
const veeOf = (includedRad: number, diameterMm: number) => veeCutter({ includedRad, diameterMm });
/** Width in mm below which a V fills with clear seal alone: 4 t / cos(A/2). */
const veeGhostWidthMm = (deg: number, filmMm: number): number => (4 * filmMm) / Math.cos(rad(deg / 2));
/** Height in mm to which the film of both walls of a V pools when it drains: √(t w / (sin(A/2) tan(A/2))). */
const veePoolMm = (widthMm: number, deg: number, filmMm: number): number =>
  Math.sqrt((filmMm * widthMm) / (Math.sin(rad(deg / 2)) * Math.tan(rad(deg / 2))));
/** The same on the floor of a flat-bottomed stroke: t (w + 2D) / w. */
const flatPoolMm = (widthMm: number, depthMm: number, filmMm: number): number =>
  (filmMm * (widthMm + 2 * depthMm)) / widthMm;
/** A V of width w at the face: w = 2 D tan(A/2). */
const vee = (widthMm: number, deg: number): StrokeSection => ({
  widthMm,
  depthMm: widthMm / (2 * Math.tan(rad(deg) / 2)),
  cutter: veeOf(rad(deg), widthMm),
});
const flat = (widthMm: number, depthMm: number): StrokeSection => ({
  widthMm,
  depthMm,
  cutter: flatCutter(widthMm),
});

describe('V strokes', () => {
  test.each([
    [30, 1.73205, 3.73205],
    [60, 1.42265, 1.73205],
    [90, 1, 1],
  ])(
    '%d°: 0.5 mm off 2 mm leave %d mm, and all of its %d mm of depth is gone in the end',
    (deg, left, depth) => {
      expect(levelledStroke(vee(2, deg), BARE, 0.5).widthMm).toBeCloseTo(left, 5);
      const { goneMm, thinMm } = strokeMargin(vee(2, deg), BARE, { ...NOTHING, narrowestMm: left });
      expect(goneMm).toBeCloseTo(depth, 5);
      expect(thinMm).toBeCloseTo(0.5, 4);
    },
  );

  test.each([
    [30, 0.414],
    [60, 0.462],
    [90, 0.566],
  ])('%d°: 0.1 mm of seal fills strokes below %d mm', (deg, ghostMm) => {
    const film = { ...BARE, filmMm: 0.1 };
    expect(veeGhostWidthMm(deg, 0.1)).toBeCloseTo(ghostMm, 3);
    expect(strokeMargin(vee(veeGhostWidthMm(deg, 0.1), deg), film, NOTHING).goneMm).toBeCloseTo(0, 12);
    expect(strokeMargin(vee(veeGhostWidthMm(deg, 0.1) + 0.01, deg), film, NOTHING).goneMm).toBeGreaterThan(0);
  });

  test('0.5 mm wide at 60° under 0.1 mm of film: the pool stands 0.416 of 0.433 mm high, 92.4 % of the section', () => {
    const film = { ...BARE, filmMm: 0.1 };
    const { colourDepthMm } = levelledStroke(vee(0.5, 60), film, 0);
    expect(0.5 / (2 * Math.tan(rad(30)))).toBeCloseTo(0.433, 3);
    expect(0.5 / (2 * Math.tan(rad(30))) - colourDepthMm).toBeCloseTo(0.416, 3);
    const fullMm = 0.5 / (2 * Math.tan(rad(30)));
    expect((veePoolMm(0.5, 60, 0.1) / fullMm) ** 2).toBeCloseTo(0.924, 3);
    expect(fullMm - veePoolMm(0.5, 60, 0.1)).toBeCloseTo(colourDepthMm, 12);
  });

  test('a face that lies 0.3 mm low makes a 90° V 0.6 mm narrower and 0.3 mm shallower', () => {
    const low = levelledStroke(vee(2, 90), { ...BARE, shallowByMm: 0.3 }, 0);
    expect(low.widthMm).toBeCloseTo(2 - 0.6, 12);
    expect(low.colourDepthMm).toBeCloseTo(1 - 0.3, 12);
  });

  test('with a level floor the pool lies between the flat’s and the V’s', () => {
    // 60°, 4 mm wide, 2 mm deep: floor 4 − 4 tan 30°
    const section: StrokeSection = { widthMm: 4, depthMm: 2, cutter: veeOf(rad(60), 12) };
    const film = { ...BARE, filmMm: 0.1 };
    const pool = 2 - levelledStroke(section, film, 0).colourDepthMm;
    const floor = 4 - 4 * Math.tan(rad(30));
    // definition: the pool's area is the film's
    const filmArea = 0.1 * (floor + (2 * 2) / Math.cos(rad(30)));
    expect(floor * pool + pool * pool * Math.tan(rad(30))).toBeCloseTo(filmArea, 12);
  });
});

describe('flat strokes', () => {
  test('3.2 mm deep, 2 % shrinkage and 0.5 mm off leave 2.636 mm', () => {
    const shop = { ...BARE, shrinkagePct: 2 };
    expect(levelledStroke(flat(2, 3.2), shop, 0.5).colourDepthMm).toBeCloseTo(2.636, 12);
    expect(strokeMargin(flat(2, 3.2), shop, { ...NOTHING, shallowestMm: 1 })).toMatchObject({
      goneMm: 3.2 * 0.98,
      thinMm: Number.POSITIVE_INFINITY,
      shallowMm: 3.2 * 0.98 - 1,
    });
  });

  test('0.8 mm wide, 3.2 mm deep under 0.1 mm of film: the pool is 28.1 % of the depth', () => {
    const { colourDepthMm } = levelledStroke(flat(0.8, 3.2), { ...BARE, filmMm: 0.1 }, 0);
    expect(1 - colourDepthMm / 3.2).toBeCloseTo(0.281, 3);
    expect(3.2 - flatPoolMm(0.8, 3.2, 0.1)).toBeCloseTo(colourDepthMm, 12);
  });

  test('keep their width, so that only one too narrow from the start is too narrow', () => {
    expect(strokeMargin(flat(2, 3), BARE, { ...NOTHING, narrowestMm: 0.8 }).thinMm).toBe(Infinity);
    expect(strokeMargin(flat(0.7, 3), BARE, { ...NOTHING, narrowestMm: 0.8 }).thinMm).toBe(0);
  });
});

describe('strokes of a ball of 3 mm, radius R = 1.5', () => {
  const R = 1.5;
  const chord = (z: number): number => 2 * Math.sqrt(2 * R * z - z * z);
  /** A groove in one pass of the ball at a depth, or one wider than that. */
  const ball = (depthMm: number, beyondMm = 0): StrokeSection => ({
    widthMm: (depthMm < R ? chord(depthMm) : 2 * R) + beyondMm,
    depthMm,
    cutter: ballCutter(2 * R),
  });

  test.each([0.2, 0.5, 0.9, 1.1])('1.2 mm deep keep the chord 2 √(2 R z − z²) once %d mm are off', (off) => {
    const z = 1.2 - off;
    expect(levelledStroke(ball(1.2), BARE, off)).toMatchObject({
      widthMm: expect.closeTo(chord(z), 12),
      colourDepthMm: expect.closeTo(z, 12),
    });
    // a wider stroke has the same walls on both sides of a floor
    expect(levelledStroke(ball(1.2, 2), BARE, off).widthMm).toBeCloseTo(2 + chord(z), 12);
    expect(strokeMargin(ball(1.2), BARE, { ...NOTHING, narrowestMm: chord(z) }).thinMm).toBeCloseTo(off, 12);
  });

  test('deeper than R keep their width down to the ball, and lose it below', () => {
    expect(levelledStroke(ball(2.5), BARE, 1).widthMm).toBe(3);
    expect(levelledStroke(ball(2.5), BARE, 1.8).widthMm).toBeCloseTo(chord(0.7), 12);
    expect(strokeMargin(ball(2.5), BARE, { ...NOTHING, narrowestMm: chord(0.7) }).thinMm).toBeCloseTo(
      1.8,
      12,
    );
  });

  test('a face that lies low counts like what is taken off', () => {
    const low = { ...BARE, shallowByMm: 0.3 };
    expect(levelledStroke(ball(1.2), low, 0.2)).toEqual(levelledStroke(ball(1.2), BARE, 0.5));
    expect(strokeMargin(ball(1.2), low, { ...NOTHING, narrowestMm: chord(0.7) }).thinMm).toBeCloseTo(0.2, 12);
  });

  test('hold a film of π R t, 2 t/R of the half circle, which pools to a segment of that area', () => {
    const film = { ...BARE, filmMm: 0.1 };
    expect(clearShare(ball(R), 0.1)).toBeCloseTo((2 * 0.1) / R, 12);
    const h = R - levelledStroke(ball(R), film, 0).colourDepthMm;
    const segment = R * R * Math.acos((R - h) / R) - (R - h) * Math.sqrt(2 * R * h - h * h);
    expect(segment).toBeCloseTo(Math.PI * R * 0.1, 12);
    // filled to the brim there is nothing left: t = R/2
    expect(strokeMargin(ball(R), { ...BARE, filmMm: R / 2 }, NOTHING).goneMm).toBeCloseTo(0, 9);
  });

  test('shrink by the half circle over its width: π R/4 for each unit, 21 % less than an upright stroke', () => {
    const shrinking = { ...BARE, shrinkagePct: 2 };
    expect(R - levelledStroke(ball(R), shrinking, 0).colourDepthMm).toBeCloseTo((0.02 * Math.PI * R) / 4, 12);
  });

  test('with upright sides above: film and room are both of them', () => {
    // 2 mm deeper than R
    const area = (Math.PI * R * R) / 2 + 2 * 2 * R;
    expect(clearShare(ball(R + 2), 0.1)).toBeCloseTo((0.1 * (Math.PI * R + 4)) / area, 12);
  });
});

describe('strokes of a tapered ball: 1 mm tip, 5° a side', () => {
  const [tip, side] = [0.5, rad(5)];
  const cutter = taperedBallCutter({ tipDiameterMm: 2 * tip, sideRad: side, diameterMm: 6 });
  const touch = tip * (1 - Math.sin(side));
  /** Width in one pass at a depth beyond the ball. */
  const width = (depthMm: number): number => 2 * (tip * Math.cos(side) + (depthMm - touch) * Math.tan(side));

  test('lose 2 s tan of the side, linearly, down to the ball', () => {
    const section = { widthMm: width(3), depthMm: 3, cutter };
    for (const off of [0.1, 0.5, 2.5]) {
      expect(levelledStroke(section, BARE, off).widthMm).toBeCloseTo(width(3) - 2 * off * Math.tan(side), 12);
    }
    const { thinMm } = strokeMargin(section, BARE, { ...NOTHING, narrowestMm: width(3) - 0.1 });
    expect(thinMm).toBeCloseTo(0.05 / Math.tan(side), 9);
    // 2.8 mm down there is the ball alone
    expect(levelledStroke(section, BARE, 2.8).widthMm).toBeCloseTo(2 * Math.sqrt(2 * tip * 0.2 - 0.04), 12);
  });

  test('hold a film as long as ball and flanks', () => {
    const section = { widthMm: width(3), depthMm: 3, cutter };
    const flank = (3 - touch) / Math.cos(side);
    const turn = Math.PI / 2 - side;
    const area =
      tip * tip * turn -
      tip * Math.sin(side) * tip * Math.cos(side) +
      ((width(3) + width(touch)) / 2) * (3 - touch);
    expect(clearShare(section, 0.1)).toBeCloseTo((0.1 * 2 * (flank + tip * turn)) / area, 9);
  });
});

test('each margin is what may come off until the levelled stroke reaches its limit, and upright walls are the V’s end', () => {
  const any = fc.record({
    widthMm: fc.double({ min: 0.5, max: 20, noNaN: true }),
    part: fc.double({ min: 0.05, max: 1, noNaN: true }),
    deg: fc.double({ min: 1, max: 150, noNaN: true }),
    filmMm: fc.double({ min: 0, max: 0.3, noNaN: true }),
    shrinkagePct: fc.double({ min: 0, max: 5, noNaN: true }),
    shallowByMm: fc.double({ min: 0, max: 0.5, noNaN: true }),
    narrowestMm: fc.double({ min: 0, max: 1, noNaN: true }),
    shallowestMm: fc.double({ min: 0, max: 1, noNaN: true }),
    faintWidthMm: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(any, ({ widthMm, part, deg, narrowestMm, shallowestMm, faintWidthMm, ...shop }) => {
      const whole = vee(widthMm, deg);
      const section = { ...whole, depthMm: whole.depthMm * part };
      const margin = strokeMargin(section, shop, { narrowestMm, shallowestMm, faintMm: 0, faintWidthMm });
      const { goneMm, lostMm, shallowMm, thinMm, unseenMm } = margin;
      if (goneMm > 0) {
        expect(levelledStroke(section, shop, goneMm).colourDepthMm).toBeCloseTo(0, 9);
      }
      if (shallowMm > 0) {
        expect(levelledStroke(section, shop, shallowMm).colourDepthMm).toBeCloseTo(shallowestMm, 9);
      }
      if (thinMm > 0 && thinMm < Infinity) {
        expect(levelledStroke(section, shop, thinMm).widthMm).toBeCloseTo(narrowestMm, 9);
      }
      if (unseenMm > 0 && unseenMm < Infinity) {
        expect(levelledStroke(section, shop, unseenMm).widthMm).toBeCloseTo(faintWidthMm, 9);
      }
      expect(lostMm).toBeLessThanOrEqual(unseenMm);
      // 1e-7 rad from upright: the same as upright to what 2 D tan is of the width
      const upright = levelledStroke(flat(widthMm, 3), shop, 0.5);
      const steep = levelledStroke({ widthMm, depthMm: 3, cutter: veeOf(1e-7, 1e-3) }, shop, 0.5);
      expect(steep.colourDepthMm).toBeCloseTo(upright.colourDepthMm, 5);
      expect(steep.widthMm).toBeCloseTo(upright.widthMm, 5);
    }),
    cases(200),
  );
});

test('what is no section is refused', () => {
  const cutter = flatCutter(1);
  expect(() => strokeMargin({ widthMm: 0, depthMm: 3, cutter }, BARE, NOTHING)).toThrow(RangeError);
  expect(() => strokeMargin({ widthMm: 1, depthMm: 0, cutter }, BARE, NOTHING)).toThrow(RangeError);
});
