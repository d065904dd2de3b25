import {
  leftStanding,
  medialAxis,
  narrowStretches,
  openedArea,
  outsideOf,
  strokeWidths,
} from '@pourproof/geometry';
import { type CleanRegion, rotation, signedArea, transformRings } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';
import { arc, roundWedge, stadium, vee, wedge } from '../support/shapes/stroke-shapes.ts';

const FLAT = [0.01, 0.002];

/** What a person would call the narrowest stroke of each shape, mm; the bound covers the flattening alone. */
const labelled: [name: string, ring: (tolerance: number) => number[], narrowest: number][] = [
  ['plain bar', () => rectangle(0, 0, 20, 3), 3],
  ['bar with round ends', (t) => stadium(20, 3, t), 3],
  ['disc', (t) => arc(0, 0, 2, 0, 2 * Math.PI, t).slice(2), 4],
  [
    'stem with slab serifs',
    () => [0, 0, 6, 0, 6, 1, 4, 1, 4, 9, 6, 9, 6, 10, 0, 10, 0, 9, 2, 9, 2, 1, 0, 1],
    1,
  ],
  ['stem with bevelled feet', () => [0, 0, 6, 0, 4, 2, 4, 10, 2, 10, 2, 2], 2],
  [
    'hairline between two stems',
    () => [0, 0, 3, 0, 3, 4, 9, 4, 9, 0, 12, 0, 12, 9, 9, 9, 9, 4.4, 3, 4.4, 3, 9, 0, 9],
    0.4,
  ],
  ['two strokes that meet at 40°', () => vee(40, 12, 2), 2],
  ['two strokes that meet at 20°', () => vee(20, 20, 2), 2],
  [
    'ball on a stem',
    (t) => [...arc(0, 0, 3, Math.asin(1 / 3), 2 * Math.PI - Math.asin(1 / 3), t), 15, -1, 15, 1],
    2,
  ],
  ['waist', () => [0, 0, 10, 1, 20, 0, 20, 4, 10, 3, 0, 4], 2],
  [
    // 2 mm wide at its end; the stroke begins where the way from the end's corner is two clearances, 1.942 mm in
    'wedge of 10° with a blunt end',
    () => [0, -1, 20, -1 - 20 * Math.tan(Math.PI / 36), 20, 1 + 20 * Math.tan(Math.PI / 36), 0, 1],
    2 * (1 + 1.942 * Math.tan(Math.PI / 36)) * Math.cos(Math.PI / 36),
  ],
];

describe('the narrowest stroke is the one that a person would point at', () => {
  for (const [name, ring, want] of labelled) {
    test(name, () => {
      for (const tolerance of FLAT) {
        const got = strokeWidths(medialAxis(cleanFrom([ring(tolerance)]))).narrowestMm ?? 0;
        // chords lie inside their arc by the tolerance on either side; feet of stems widen a little before they end
        expect(Math.abs(got - want), `${got} at ${tolerance}`).toBeLessThan(
          Math.max(3 * tolerance, 0.13 * want),
        );
      }
    });
  }

  test('none in an empty region', () => {
    const widths = strokeWidths(medialAxis(cleanFrom([])));
    expect(widths.narrowestMm).toBeNull();
    expect(widths.narrowestAt).toEqual([0, 0]);
    expect(widths.lengthMm).toBe(0);
    expect([...widths.histogram([0, 1, 2])]).toEqual([0, 0]);
  });
});

describe('stretches narrower than a limit', () => {
  test('a corridor between two rooms is one stroke, cut off where it widens past the limit', () => {
    const bell = [0, 0, 6, 0, 6, 2, 10, 2, 10, 0, 16, 0, 16, 6, 10, 6, 10, 3, 6, 3, 6, 6, 0, 6];
    const axis = medialAxis(cleanFrom([bell]));
    const [stretch, ...others] = narrowStretches(axis, 1.5);
    expect(others).toEqual([]);
    expect(stretch.kind).toBe('stroke');
    expect(stretch.narrowestMm).toBeCloseTo(1, 12);
    // between two points a mm apart the axis is straight: width 1.5 is reached √(0.75² − 0.5²) from them
    expect(stretch.lengthMm).toBeCloseTo(4 + 2 * Math.sqrt(0.75 ** 2 - 0.5 ** 2), 9);
    expect(stretch.widths[0]).toBeCloseTo(1.5, 9);
    expect(stretch.widths.at(-1)).toBeCloseTo(1.5, 9);
    expect(stretch.path[1]).toBeCloseTo(2.5, 9);
    expect(strokeWidths(axis).lengthNarrowerThan(1.5)).toBeCloseTo(stretch.lengthMm, 12);
  });

  test('a pointed wedge is a taper with the length below the limit, and no stroke', () => {
    for (const deg of [5, 10, 28]) {
      const axis = medialAxis(cleanFrom([wedge(deg, 40)]));
      const stretches = narrowStretches(axis, 0.8);
      expect(stretches.map((s) => s.kind)).toEqual(['taper']);
      expect(stretches[0].lengthMm).toBeCloseTo(0.4 / Math.sin((deg * Math.PI) / 360), 9);
      expect(stretches[0].narrowestMm).toBe(0);
    }
  });

  test('a handle that widens a little all along up to a wide blade is a stroke, for all that it grows', () => {
    // 2 mm wide at its square end, 3.2 mm after 60 mm; a needle of such flanks would begin 100 mm before its end
    const paddle = cleanFrom([[0, -1, 60, -1.6, 60, -9, 80, -9, 80, 9, 60, 9, 60, 1.6, 0, 1]]);
    const widths = strokeWidths(medialAxis(paddle));
    expect(widths.tapers).toBeNull();
    expect(widths.narrowestMm).toBeGreaterThan(2);
    expect(widths.narrowestMm).toBeLessThan(2.05);
  });

  test('a needle with a rounded tip is a taper too, at either flattening', () => {
    for (const deg of [6, 9, 20]) {
      for (const tolerance of FLAT) {
        const axis = medialAxis(cleanFrom([roundWedge(deg, 0.2, 40, tolerance)]));
        expect(narrowStretches(axis, 0.8).map((s) => s.kind)).toEqual(['taper']);
      }
    }
  });

  test('square, acute and flattened round corners are none', () => {
    for (const ring of [rectangle(0, 0, 9, 4), wedge(60, 9), regular(200, 5), stadium(9, 3, 0.002)]) {
      expect(narrowStretches(medialAxis(cleanFrom([ring])), 2)).toEqual([]);
    }
  });

  test('a thin ring is one stretch as long as its middle line', () => {
    const axis = medialAxis(cleanFrom([regular(400, 10)], [regular(400, 9.5)]));
    const stretches = narrowStretches(axis, 0.6);
    expect(stretches.length).toBe(1);
    // chords of 400 corners are short of the circle by 1 part in 10,000
    expect(Math.abs(stretches[0].lengthMm / (2 * Math.PI * 9.75) - 1)).toBeLessThan(1e-3);
  });

  test('a histogram over all widths holds the whole length', () => {
    const widths = strokeWidths(medialAxis(cleanFrom([labelled[3][1](0.01)])));
    const bins = widths.histogram([0, 0.5, 1.0001, 2.0001, 5, 50]);
    expect(bins.reduce((a, b) => a + b, 0)).toBeCloseTo(widths.lengthMm, 9);
    expect(bins[0]).toBe(0);
  });
});

describe('pieces left standing', () => {
  test('corners are told from parts of strokes', () => {
    const bell = [0, 0, 6, 0, 6, 2, 10, 2, 10, 0, 16, 0, 16, 6, 10, 6, 10, 3, 6, 3, 6, 6, 0, 6];
    const { pieces } = leftStanding(medialAxis(cleanFrom([bell])), 1, 0.001);
    const [corridor, ...more] = pieces.filter((piece) => piece.kind !== 'corner');
    expect(more).toEqual([]);
    expect(corridor.widestMm).toBeCloseTo(1, 9);
    expect(corridor.atMm[1]).toBeCloseTo(2.5, 9);
    expect(pieces.length).toBe(9);
    const corner = pieces.find((piece) => piece.kind === 'corner');
    expect(corner?.areaMm2).toBeCloseTo(1 - Math.PI / 4, 9);
    for (const piece of pieces) {
      expect(Math.abs(signedArea(piece.outline) - piece.areaMm2)).toBeLessThan(0.001 * 8);
    }
  });

  test('a bar that no bit enters has its own width as the mean', () => {
    for (const [length, width] of [
      [40, 2],
      [90, 0.5],
    ] as const) {
      const { pieces } = leftStanding(medialAxis(cleanFrom([rectangle(0, 0, length, width)])), 3, 0.001);
      expect(pieces.map(({ kind }) => kind)).toEqual(['part']);
      expect(pieces[0].meanWidthMm).toBeCloseTo(width, 9);
      expect(pieces[0].widestMm).toBeCloseTo(width, 9);
      // nothing is cut that it could end short of
      expect(pieces[0].shortMm).toBeNull();
    }
    // at the corners of a ring the axis is bent
    const { pieces } = leftStanding(medialAxis(cleanFrom([regular(90, 10)], [regular(90, 9)])), 3, 0.001);
    expect(pieces[0].meanWidthMm).toBeCloseTo(Math.cos(Math.PI / 90), 3);
  });

  test('what stands between rooms on a corridor is as long and as wide whichever way the artwork is turned', () => {
    // rooms of 6 × 6 that hang on a corridor 1 mm wide, now above it, now below, at uneven distances
    const [above, below] = [
      [4, 19, 40],
      [9, 27, 48],
    ];
    const top = below.flatMap((x) => [x, 1, x, 7, x + 6, 7, x + 6, 1]);
    const low = above.flatMap((x) => [x, 0, x, -6, x + 6, -6, x + 6, 0]);
    const rooms = [0, 0, ...low, 60, 0, 60, 1];
    for (let i = top.length - 2; i >= 0; i -= 2) {
      rooms.push(top[i], top[i + 1]);
    }
    rooms.push(0, 1);
    const region = cleanFrom([rooms]);
    const told = [0, 1, 2, 3].map((quarter) => {
      const turned = transformRings(rotation((quarter * Math.PI) / 2), region) as CleanRegion;
      const { pieces } = leftStanding(medialAxis(turned), 1, 0.001);
      const strokes = pieces.filter(({ kind }) => kind !== 'corner');
      return strokes.map(({ lengthMm, meanWidthMm, mouths }) => [lengthMm, meanWidthMm, mouths]);
    });
    expect(told[0].length).toBeGreaterThan(0);
    for (const turned of told) {
      expect(turned.length).toBe(told[0].length);
      for (const [k, values] of turned.entries()) {
        values.forEach((value, i) => {
          expect(value).toBeCloseTo(told[0][k][i], 6);
        });
      }
    }
  });

  test('between chords of an arc nothing stands but facets, which are counted with their area', () => {
    for (const tolerance of FLAT) {
      const axis = medialAxis(cleanFrom([stadium(9, 3, tolerance)]));
      for (const radius of [0.3, 1, 1.4]) {
        const { pieces, facetCount, facetAreaMm2 } = leftStanding(axis, radius, tolerance);
        expect(pieces).toEqual([]);
        expect(facetCount).toBeGreaterThan(10);
        // each stands off by less than the tolerance, along no more than the round ends
        expect(facetAreaMm2).toBeLessThan(tolerance * 3 * Math.PI);
        expect(facetAreaMm2).toBeCloseTo(signedArea(axis.region) - openedArea(axis, radius), 12);
      }
    }
  });

  test('a corner counts as a facet only where the bit comes within the tolerance of its tip', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 9, 4)]));
    // a bit of radius 1 stays √2 − 1 away from a right corner
    const off = Math.SQRT2 - 1;
    expect(leftStanding(axis, 1, off - 1e-6)).toMatchObject({ facetCount: 0, facetAreaMm2: 0 });
    const { pieces, facetCount, facetAreaMm2 } = leftStanding(axis, 1, off + 1e-6);
    expect(pieces).toEqual([]);
    expect(facetCount).toBe(4);
    expect(facetAreaMm2).toBeCloseTo(4 - Math.PI, 12);
    expect(() => leftStanding(axis, 1, 0)).toThrow(RangeError);
  });

  test('artwork that no bit enters stands as a whole, holes and all', () => {
    const region = cleanFrom([rectangle(0, 0, 10, 10)], [rectangle(1, 1, 8, 8)]);
    const [piece, ...more] = leftStanding(medialAxis(region), 2, 0.01).pieces;
    expect(more).toEqual([]);
    expect(piece.areaMm2).toBeCloseTo(36, 12);
    expect(piece.outline.ringEnds.length).toBe(2);
    expect(piece.kind).not.toBe('corner');
  });
});

test('the wood between two pockets is a stroke of the outside', () => {
  const pockets = cleanFrom([rectangle(0, 0, 10, 10), rectangle(10.8, 0, 10, 10)]);
  const outside = outsideOf(pockets, 5);
  expect(signedArea(outside)).toBeCloseTo(30.8 * 20 - 200, 9);
  const widths = strokeWidths(medialAxis(outside));
  expect(widths.narrowestMm).toBeCloseTo(0.8, 12);
  expect(widths.narrowestAt[0]).toBeCloseTo(10.4, 9);
});
