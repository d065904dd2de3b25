import { resolveRegions } from '@pourproof/arrangement';
import { flatCutter, veeCutter } from '@pourproof/cutting';
import { medialAxis, strokeLines } from '@pourproof/geometry';
import { packRings } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import type { MapSetting } from './graded-parts.ts';
import { levellingMap } from './levelling-map.ts';

/**
 * A trapezium 100 mm long whose height grows evenly from 0.5 to 2.5 mm: a stroke with these widths along its
 * middle (nearly).
 */
const LINE = {
  kind: 'stroke',
  part: 0,
  path: Float64Array.of(0, 0, 100, 0),
  widths: Float64Array.of(0.5, 2.5),
} as const;
const FLAT: MapSetting = {
  planMm: 0.5,
  sectionAt: (widthMm) => (widthMm < 0.6 ? null : { widthMm, depthMm: 3, cutter: flatCutter(0.6) }),
  shop: { filmMm: 0.25, shrinkagePct: 0 },
  shallowAt: () => 0,
  keeps: { narrowestMm: 0, faintWidthMm: 0 },
  needsAt: () => ({ shallowestMm: 1, faintMm: 0.3 }),
};
const RIGHT_ANGLED = veeCutter({ includedRad: Math.PI / 2, diameterMm: 12 });
const VEE: MapSetting = {
  planMm: 0.5,
  // 90°: depth is half of the width
  sectionAt: (widthMm) => ({ widthMm, depthMm: widthMm / 2, cutter: RIGHT_ANGLED }),
  shop: { filmMm: 0, shrinkagePct: 0 },
  shallowAt: () => 0,
  keeps: { narrowestMm: 0.5, faintWidthMm: 0 },
  needsAt: () => ({ shallowestMm: 0, faintMm: 0 }),
};
/** The artwork that the line is the middle of, as a part. */
const PART = { part: 0, atMm: [100, 0], widthMm: 2.5, strokeMm: 2.5 } as const;
/** Where along the line a width is. */
const at = (widthMm: number): number => (100 * (widthMm - 0.5)) / 2;

describe('a flat cut under 0.25 mm of film, 3 mm deep', () => {
  const map = levellingMap([LINE], [PART], FLAT);
  // t (w + 2 D)/w pooled: 3 − s = 0.25 (w + 6)/w
  const widthAt = (roomMm: number): number => (0.25 * 6) / (roomMm - 0.25);

  test('is parted where colour is too shallow, close and safe, to the closed forms', () => {
    // on the floor alone the film takes 0.25 mm: 2.25 mm are left however narrow it is
    expect(map.lengthMm.lost).toBe(0);
    expect(map.lengthMm.spoilt).toBeCloseTo(at(widthAt(1.5)) - at(0.6), 3);
    expect(map.lengthMm.close).toBeCloseTo(at(widthAt(1)) - at(widthAt(1.5)), 3);
    expect(map.lengthMm.holds).toBeCloseTo(100 - at(widthAt(1)), 3);
    expect(map.stretches.map(({ grade }) => grade)).toEqual(['spoilt', 'close', 'holds']);
  });

  test('is lost where a plan leaves no more than is no colour, however the seal lies', () => {
    const lost = (planMm: number): number => levellingMap([LINE], [PART], { ...FLAT, planMm }).lengthMm.lost;
    expect(lost(2.44)).toBe(0);
    expect(lost(2.46)).toBeCloseTo(100 - at(0.6), 3);
  });

  test('goes first at the narrowest place that is cut, not where no bit enters, which is told', () => {
    expect(map.first?.atMm[0]).toBeCloseTo(at(0.6), 3);
    expect(map.first?.goneMm).toBeCloseTo(3 - (0.25 * 6.6) / 0.6, 5);
    expect(map.uncutMm).toBeCloseTo(at(0.6), 3);
  });

  test('a low spot of the face takes its depth from the margin there only', () => {
    const low = levellingMap([LINE], [PART], {
      ...FLAT,
      shallowAt: ([x]) => (x > 90 ? 1 + 5e-3 * (x - 90) : 0),
    });
    expect(map.stretches.at(-1)?.grade).toBe('holds');
    expect(low.stretches.at(-1)?.grade).toBe('spoilt');
    expect(low.stretches[0]?.first.goneMm).toBeCloseTo(map.stretches[0]?.first.goneMm ?? 0, 9);
  });
});

test('a part without a stroke is judged as a round pocket; one that no bit enters has no margin', () => {
  const dots = [
    { part: 0, atMm: [0, 0], widthMm: 5, strokeMm: 0 },
    { part: 1, atMm: [20, 0], widthMm: 0.5, strokeMm: 0 },
  ] as const;
  const map = levellingMap([], dots, FLAT);
  // a dot's film pools to t (1 + 4 D/w)
  expect(map.first?.goneMm).toBeCloseTo(3 - 0.25 * (1 + (4 * 3) / 5), 9);
  expect(map.areas.map(({ grade }) => grade)).toEqual(['holds']);
  expect(map.parts.map(({ first }) => first?.form ?? null)).toEqual(['dot', null]);
});

describe('a 90° V', () => {
  const map = levellingMap([LINE], [PART], VEE);

  test('is lost up to twice the plan wide and too thin up to half a millimetre more', () => {
    // depth w/2 ≤ 0.5; width w − 2 s < 0.5; width w − 4 s < 0.5
    expect(map.lengthMm.lost).toBeCloseTo(at(1), 3);
    expect(map.lengthMm.spoilt).toBeCloseTo(at(1.5) - at(1), 3);
    expect(map.lengthMm.close).toBeCloseTo(100 - at(1.5), 3);
    expect(map.lengthMm.holds).toBe(0);
  });

  test('goes first at its narrow end, after half of the width there', () => {
    expect(map.first?.atMm).toEqual([0, 0]);
    expect(map.first?.goneMm).toBeCloseTo(0.25, 12);
  });
});

test('a taper ends in nothing and still is not what goes first beside a stroke', () => {
  const taper = { ...LINE, kind: 'taper', widths: Float64Array.of(0, 2.5) } as const;
  expect(levellingMap([taper, LINE], [PART], VEE).first?.goneMm).toBeCloseTo(0.25, 12);
  // of the taper alone its widest place, as of a dot
  expect(levellingMap([taper], [PART], VEE).first).toMatchObject({ form: 'dot', widthMm: 2.5 });
});

test('all lengths add up to the strokes, and no stroke is no map', () => {
  const map = levellingMap([LINE], [PART], FLAT);
  const sum = Object.values(map.lengthMm).reduce((total, each) => total + each, 0);
  // changes of grade are located to a millionth of the line
  expect(sum + map.uncutMm).toBeCloseTo(100, 2);
  expect(levellingMap([], [], FLAT)).toMatchObject({ stretches: [], areas: [], first: null });
});

test('lines of a plus sign are its four arms, with the width of its bars', () => {
  // bars 40 mm long, 4 and 2 mm wide
  const plus = [18, 0, 22, 0, 22, 19, 40, 19, 40, 21, 22, 21, 22, 40, 18, 40, 18, 21, 0, 21, 0, 19, 18, 19];
  const lines = strokeLines(
    medialAxis(resolveRegions([{ ...packRings([plus]), fillRule: 'nonzero' }]).region),
  );
  const ends = lines.filter(
    ({ path }) =>
      Math.hypot((path[0] ?? 0) - 20, (path[1] ?? 0) - 20) > 5 ||
      Math.hypot((path.at(-2) ?? 0) - 20, (path.at(-1) ?? 0) - 20) > 5,
  );
  expect(ends).toHaveLength(4);
  expect(ends.map(({ widths }) => Math.min(...widths)).toSorted((a, b) => a - b)).toEqual([2, 2, 4, 4]);
});
