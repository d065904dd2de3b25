import { booleans, resolveRegions } from '@pourproof/arrangement';
import { medialAxis, outsideOf } from '@pourproof/geometry';
import { type CleanRegion, type Drawing, packRings, signedArea, textInUnits } from '@pourproof/plane';
import {
  changeDrawing,
  type DrawingChange,
  offsetRegion,
  roundedCorners,
  roundedTips,
} from '@pourproof/redraw';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, between } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

const toleranceMm = 0.005;
const NO_CHANGE: DrawingChange = {
  widenMm: 0,
  joins: 'mitre',
  keepApartMm: 0,
  roundTipsMm: 0,
  roundCornersMm: 0,
  leastStrokeMm: 0,
  colourWallMm: 0,
  colourLayers: [],
};

function drawingOf(...shapes: readonly (readonly [colour: string, rings: readonly number[][]])[]): Drawing {
  return {
    format: 'svg',
    scaleSource: textInUnits('as drawn'),
    shapes: shapes.map(([colour, rings], k) => ({
      region: { ...packRings(rings), fillRule: 'evenodd' as const },
      layer: '',
      colour,
      source: `shape ${k + 1}`,
    })),
    notices: [],
    toleranceMm,
  };
}

const wholeOf = ({ shapes }: Drawing): CleanRegion =>
  resolveRegions(shapes.map(({ region }) => region)).region;
const ringsOf = (region: CleanRegion): number => region.ringEnds.length;
const leastGap = (region: CleanRegion): number => {
  const { nodeR, bottleneckCount } = medialAxis(outsideOf(region, 20));
  return 2 * Math.min(...nodeR.subarray(0, bottleneckCount));
};

describe('what would close is kept apart', () => {
  test('two bars that would touch keep the wood asked for between them, and a notice says where', () => {
    const drawing = drawingOf(['#000000', [rectangle(0, 0, 30, 4)]], ['#000000', [rectangle(0, 5.2, 30, 4)]]);
    const made = changeDrawing(drawing, { ...NO_CHANGE, widenMm: 1, keepApartMm: 0.5 });
    expect(leastGap(wholeOf(made))).toBeCloseTo(0.5, 3);
    expect(ringsOf(wholeOf(made))).toBe(2);
    const [notice] = made.notices;
    expect(notice).toMatchObject({ code: 'widening-kept-apart', params: { places: 1, leastMm: 0.5 } });
    expect(notice!.where[0]!.atMm![1]).toBeCloseTo(4.6, 6);
    expect(made.shapes.map(({ source }) => source)).toEqual(['shape 1', 'shape 2']);
    // with room enough nothing is said, and without being asked they run together
    expect(changeDrawing(drawing, { ...NO_CHANGE, widenMm: 0.5, keepApartMm: 0.5 }).notices).toEqual([]);
    expect(ringsOf(wholeOf(changeDrawing(drawing, { ...NO_CHANGE, widenMm: 1.3 })))).toBe(1);
  });

  test('a counter that would vanish stays as wide as asked for, or as drawn where that is less', () => {
    const ring = (hole: number): Drawing => drawingOf(['#000000', [regular(180, 8), regular(180, hole / 2)]]);
    const hole = (drawing: Drawing): number => {
      const [, inner] = [...wholeOf(drawing).ringEnds];
      expect(inner).toBeDefined();
      return 2 * Math.sqrt((signedArea(wholeOf(drawing)) - outerArea(drawing)) / -Math.PI);
    };
    const change = { ...NO_CHANGE, widenMm: 2, keepApartMm: 1, joins: 'round' as const };
    const made = changeDrawing(ring(1.6), change);
    expect(hole(made)).toBeCloseTo(1, 2);
    expect(hole(changeDrawing(ring(0.6), change))).toBeCloseTo(0.6, 2);
    expect(made.notices[0]!.code).toBe('widening-kept-apart');
  });

  test('a hairline between two bold parts is not lost by narrowing', () => {
    const drawing = drawingOf([
      '#000000',
      [[0, 0, 10, 0, 10, 4.8, 20, 4.8, 20, 0, 30, 0, 30, 10, 20, 10, 20, 5.2, 10, 5.2, 10, 10, 0, 10]],
    ]);
    const made = changeDrawing(drawing, { ...NO_CHANGE, widenMm: -1, keepApartMm: 0.6 });
    expect(ringsOf(wholeOf(made))).toBe(1);
    expect(made.notices[0]!.code).toBe('narrowing-kept-whole');
    expect(ringsOf(wholeOf(changeDrawing(drawing, { ...NO_CHANGE, widenMm: -1 })))).toBe(2);
  });

  test('whatever is drawn, parts and holes stay as many as there were', () => {
    fc.assert(
      fc.property(anyPolygon, between(0.05, 1.5), between(0.05, 0.6), (region, by, keepMm) => {
        // parts that touch in a point as drawn have no wood between
        fc.pre(!hasDoubledPoint(region));
        const { region: made } = offsetRegion(region, by, { keepMm, toleranceMm, joins: 'round' });
        expect(cleanRegionFaults(made)).toEqual([]);
        // all that was there is there still
        expect(signedArea(booleans(region, made, 'subtract'))).toBeLessThan(1e-4);
        expect(outerRings(made)).toBe(outerRings(region));
      }),
      cases(12),
    );
  });
});

describe('rounded corners', () => {
  test('of a square are quarters of a circle, outside and inside, and of nothing else', () => {
    const square = cleanFrom([rectangle(0, 0, 20, 20)], [rectangle(6, 6, 8, 8)]);
    const corner = (r: number): number => (4 - Math.PI) * r * r;
    // chords of the arcs that bound what is taken off lie within a twentieth of the tolerance
    const slack = (toleranceMm / 20) * 2 * Math.PI * 1.5;
    expect(
      Math.abs(signedArea(roundedTips(square, 1, toleranceMm).region) - (400 - corner(1) - 64)),
    ).toBeLessThan(slack);
    expect(
      Math.abs(signedArea(roundedCorners(square, 1.5, toleranceMm).region) - (400 - 64 + corner(1.5))),
    ).toBeLessThan(slack);
  });

  test('leave strokes and gaps that are narrower than twice the radius, and say so', () => {
    const comb = cleanFrom([
      [0, 0, 20, 0, 20, 5, 12, 5, 12, 20, 11, 20, 11, 5, 9.2, 5, 9.2, 20, 8.2, 20, 8.2, 5, 0, 5],
    ]);
    const tips = roundedTips(comb, 1, toleranceMm);
    expect(tips.narrow.length).toBe(2);
    expect(signedArea(comb) - signedArea(tips.region)).toBeLessThan(4 * (1 - Math.PI / 4) + 0.01);
  });
});

test('of two colours that meet, each keeps its part and grows into the wood alone', () => {
  const made = changeDrawing(
    drawingOf(['#0000ff', [rectangle(0, 0, 10, 10)]], ['#cc0000', [rectangle(10, 0, 10, 10)]]),
    { ...NO_CHANGE, widenMm: 1 },
  );
  const [blue, red] = made.shapes.map(({ region }) => resolveRegions([region]).region);
  expect(signedArea(blue!)).toBeCloseTo(10.5 * 11, 6);
  expect(signedArea(red!)).toBeCloseTo(10.5 * 11, 6);
  expect(signedArea(booleans(blue!, red!, 'intersect'))).toBeLessThan(1e-9);
});

test('a colour has about as many points after widening as the whole', () => {
  const drawing = drawingOf(['#cc0000', [regular(180, 18)]], ['#0000ff', [[-10, 0, 40, 0, 40, 30, -10, 30]]]);
  const whole = changeDrawing(drawingOf(['#cc0000', [regular(180, 18)]]), { ...NO_CHANGE, widenMm: 0.5 });
  const [red] = changeDrawing(drawing, { ...NO_CHANGE, widenMm: 0.5 }).shapes;
  expect(red!.colour).toBe('#cc0000');
  expect(red!.region.coords.length).toBeLessThan(1.1 * whole.shapes[0]!.region.coords.length);
});

function hasDoubledPoint({ coords }: CleanRegion): boolean {
  const seen = new Set(
    Array.from({ length: coords.length / 2 }, (_, i) => `${coords[2 * i]} ${coords[2 * i + 1]}`),
  );
  return seen.size < coords.length / 2;
}

function outerRings(region: CleanRegion): number {
  return Array.from(region.ringEnds, (_, k) => k).filter((k) => signedArea(ringOf(region, k)) > 0).length;
}

function ringOf(region: CleanRegion, k: number): CleanRegion {
  const from = k === 0 ? 0 : region.ringEnds[k - 1]!;
  return packRings([region.coords.subarray(2 * from, 2 * region.ringEnds[k]!)]) as CleanRegion;
}

function outerArea(drawing: Drawing): number {
  const region = wholeOf(drawing);
  return Array.from(region.ringEnds, (_, k) => signedArea(ringOf(region, k)))
    .filter((area) => area > 0)
    .reduce((a, b) => a + b, 0);
}
