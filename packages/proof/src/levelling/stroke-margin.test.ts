import { flatClearFill, veeClearFill, veeGhostWidthMm } from '@pourproof/materials';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levelledStroke, type StrokeSection, strokeMargin } from './stroke-margin.ts';

const BARE = { filmMm: 0, shrinkagePct: 0, shallowByMm: 0 };
const NOTHING = { narrowestMm: 0, shallowestMm: 0 };
const rad = (deg: number): number => (deg * Math.PI) / 180;
/** A V of width w at the face: w = 2 D tan(A/2). */
const vee = (widthMm: number, deg: number): StrokeSection => ({
  widthMm,
  depthMm: widthMm / (2 * Math.tan(rad(deg) / 2)),
  includedRad: rad(deg),
});
const flat = (widthMm: number, depthMm: number): StrokeSection => ({ widthMm, depthMm, includedRad: null });

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
    expect(veeClearFill(0.5, 60, 0.1).clearShare).toBeCloseTo(0.924, 3);
    expect(veeClearFill(0.5, 60, 0.1).colourDepthMm).toBeCloseTo(colourDepthMm, 12);
  });

  test('a face that lies 0.3 mm low makes a 90° V 0.6 mm narrower and 0.3 mm shallower', () => {
    const low = levelledStroke(vee(2, 90), { ...BARE, shallowByMm: 0.3 }, 0);
    expect(low.widthMm).toBeCloseTo(2 - 0.6, 12);
    expect(low.colourDepthMm).toBeCloseTo(1 - 0.3, 12);
  });

  test('with a level floor the pool lies between the flat’s and the V’s', () => {
    // 60°, 4 mm wide, 2 mm deep: floor 4 − 4 tan 30°
    const section: StrokeSection = { widthMm: 4, depthMm: 2, includedRad: rad(60) };
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
    expect(strokeMargin(flat(2, 3.2), shop, { ...NOTHING, shallowestMm: 1 })).toEqual({
      goneMm: 3.2 * 0.98,
      thinMm: Number.POSITIVE_INFINITY,
      shallowMm: 3.2 * 0.98 - 1,
    });
  });

  test('0.8 mm wide, 3.2 mm deep under 0.1 mm of film: the pool is 28.1 % of the depth', () => {
    const { colourDepthMm } = levelledStroke(flat(0.8, 3.2), { ...BARE, filmMm: 0.1 }, 0);
    expect(1 - colourDepthMm / 3.2).toBeCloseTo(0.281, 3);
    expect(flatClearFill(0.8, 3.2, 0.1).colourDepthMm).toBeCloseTo(colourDepthMm, 12);
  });

  test('keep their width, so that only one too narrow from the start is too narrow', () => {
    expect(strokeMargin(flat(2, 3), BARE, { ...NOTHING, narrowestMm: 0.8 }).thinMm).toBe(Infinity);
    expect(strokeMargin(flat(0.7, 3), BARE, { ...NOTHING, narrowestMm: 0.8 }).thinMm).toBe(0);
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
  });
  fc.assert(
    fc.property(any, ({ widthMm, part, deg, narrowestMm, shallowestMm, ...shop }) => {
      const whole = vee(widthMm, deg);
      const section = { ...whole, depthMm: whole.depthMm * part };
      const margin = strokeMargin(section, shop, { narrowestMm, shallowestMm });
      const { goneMm, shallowMm, thinMm } = margin;
      if (goneMm > 0) {
        expect(levelledStroke(section, shop, goneMm).colourDepthMm).toBeCloseTo(0, 9);
      }
      if (shallowMm > 0) {
        expect(levelledStroke(section, shop, shallowMm).colourDepthMm).toBeCloseTo(shallowestMm, 9);
      }
      if (thinMm > 0) {
        expect(levelledStroke(section, shop, thinMm).widthMm).toBeCloseTo(narrowestMm, 9);
      }
      // 1e-7 rad from upright: the same as upright to what 2 D tan is of the width
      const upright = levelledStroke(flat(widthMm, 3), shop, 0.5);
      const steep = levelledStroke({ widthMm, depthMm: 3, includedRad: 1e-7 }, shop, 0.5);
      expect(steep.colourDepthMm).toBeCloseTo(upright.colourDepthMm, 5);
      expect(steep.widthMm).toBeCloseTo(upright.widthMm, 5);
    }),
    { numRuns: 200 },
  );
});

test('what is no section is refused', () => {
  expect(() => strokeMargin(flat(0, 3), BARE, NOTHING)).toThrow(RangeError);
  expect(() => strokeMargin(flat(1, 0), BARE, NOTHING)).toThrow(RangeError);
  expect(() => strokeMargin({ widthMm: 1, depthMm: 1, includedRad: 0 }, BARE, NOTHING)).toThrow(RangeError);
  expect(() => strokeMargin({ widthMm: 1, depthMm: 1, includedRad: Math.PI }, BARE, NOTHING)).toThrow(
    RangeError,
  );
});
