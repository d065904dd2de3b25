import { readFileSync } from 'node:fs';
import { booleans, resolveRegions } from '@pourproof/arrangement';
import { readLettering } from '@pourproof/artwork/lettering';
import { medialAxis, openedArea, outsideOf } from '@pourproof/geometry';
import {
  boundsOf,
  type CleanRegion,
  type Drawing,
  packRings,
  signedArea,
  textInUnits,
} from '@pourproof/plane';
import { colourWalls, leastStroke, offsetRegion } from '@pourproof/redraw';
import { describe, expect, test } from 'vitest';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';

const toleranceMm = 0.005;

const lettersOf = async (font: string, text: string, capHeightMm: number): Promise<CleanRegion> => {
  const { shapes } = await readLettering(text, {
    font: new Uint8Array(readFileSync(`fixtures/fonts/${font}`)),
    capHeightMm,
    toleranceMm,
  });
  return resolveRegions(shapes.map(({ region }) => region)).region;
};

describe('strokes that are too thin become so wide', () => {
  test('a bar with square ends keeps them, and is as much longer as it is wider', () => {
    const { region, reachMm } = leastStroke(cleanFrom([rectangle(0, 0, 40, 1.5)]), 2, { toleranceMm });
    expect(reachMm).toBeCloseTo(0.25, 9);
    expect([...boundsOf(region.coords)]).toEqual(
      [-0.25, -0.25, 40.25, 1.75].map((v) => expect.closeTo(v, 6)),
    );
    expect(signedArea(region)).toBeCloseTo(40.5 * 2, 4);
  });

  test('a thin bar between two plates becomes wider, and the plates stay', () => {
    const plates = resolveRegions(
      [rectangle(0, 0, 20, 20), rectangle(19, 9.5, 12, 1), rectangle(30, 0, 20, 20)].map((ring) => ({
        ...packRings([ring]),
        fillRule: 'nonzero' as const,
      })),
    ).region;
    const { region } = leastStroke(plates, 2, { toleranceMm });
    // from plate to plate 10 mm by 1 mm more
    expect(signedArea(region) - signedArea(plates)).toBeCloseTo(10, 3);
    expect([...boundsOf(region.coords)]).toEqual([0, 0, 50, 20]);
  });

  test('corners, tips and wide strokes stay as they are', () => {
    for (const ring of [rectangle(0, 0, 20, 3), [0, 0, 40, 3, 0, 6]]) {
      const region = cleanFrom([ring]);
      expect(leastStroke(region, 2, { toleranceMm }).region).toBe(region);
    }
  });

  test('wood between two strokes that both become wider is kept', () => {
    const two = cleanFrom([rectangle(0, 0, 30, 1), rectangle(0, 1.6, 30, 1)]);
    const made = leastStroke(two, 2, { keepMm: 0.5, toleranceMm });
    const { nodeR, bottleneckCount } = medialAxis(outsideOf(made.region, 20));
    expect(2 * Math.min(...nodeR.subarray(0, bottleneckCount))).toBeCloseTo(0.5, 3);
    expect(made.kept).toHaveLength(1);
  });

  test.each([
    ['josefin-sans-300.ttf', 'Ham', 20, 2],
    ['bodoni-moda-400.ttf', 'R', 24, 1],
    ['dancing-script-400.ttf', 'An', 20, 1.5],
    ['lora-400.ttf', 'Ro', 15, 2],
  ])(
    'letters of %s: %s at %d mm grow where they are thin alone, and a second time not at all',
    async (font, text, mm, least) => {
      const letters = await lettersOf(font, text, mm);
      const { region, reachMm } = leastStroke(letters, least, { keepMm: 0.3, toleranceMm });
      expect(cleanRegionFaults(region)).toEqual([]);
      expect(signedArea(booleans(letters, region, 'subtract'))).toBeLessThan(1e-6);
      const whole = offsetRegion(letters, reachMm, { keepMm: 0.3, toleranceMm }).region;
      expect(signedArea(booleans(region, whole, 'subtract'))).toBeLessThan(1e-3 * signedArea(region));
      // what a bit of that width leaves is a fraction of what it left before
      const left = (of: CleanRegion): number =>
        signedArea(of) - openedArea(medialAxis(of), (0.99 * least) / 2);
      expect(left(region)).toBeLessThan(0.3 * left(letters));
      const again = leastStroke(region, least, { keepMm: 0.3, toleranceMm }).region;
      expect(signedArea(again) / signedArea(region)).toBeCloseTo(1, 2);
    },
  );
});

describe('walls between colours', () => {
  const drawingOf = (
    ...shapes: readonly (readonly [colour: string, ring: readonly number[]])[]
  ): Drawing => ({
    format: 'svg',
    scaleSource: textInUnits('as drawn'),
    shapes: shapes.map(([colour, ring], k) => ({
      region: { ...packRings([ring]), fillRule: 'nonzero' as const },
      layer: '',
      colour,
      source: `shape ${k + 1}`,
    })),
    notices: [],
    toleranceMm,
  });
  const areas = ({ shapes }: Drawing): readonly number[] =>
    shapes.map(({ region }) => signedArea(resolveRegions([region]).region));

  test('what is drawn on top keeps its outline, what lies beneath gives way all round', () => {
    const drawing = drawingOf(['#000000', rectangle(0, 0, 30, 30)], ['#ff0000', rectangle(10, 10, 10, 10)]);
    const [plate, square] = areas(colourWalls(drawing, 1, ({ colour }) => colour));
    expect(square).toBeCloseTo(100, 9);
    expect(plate).toBeCloseTo(900 - (100 + 40 + Math.PI), 2);
  });

  test('of two that meet side by side the one drawn first gives way; what is farther apart stays', () => {
    const meeting = drawingOf(['#000000', rectangle(0, 0, 10, 10)], ['#ff0000', rectangle(10, 0, 10, 10)]);
    expect(areas(colourWalls(meeting, 1, ({ colour }) => colour))).toEqual([
      expect.closeTo(90, 6),
      expect.closeTo(100, 6),
    ]);
    const apart = drawingOf(['#000000', rectangle(0, 0, 10, 10)], ['#ff0000', rectangle(12, 0, 10, 10)]);
    expect(areas(colourWalls(apart, 1, ({ colour }) => colour))).toEqual([100, 100]);
    // one colour of two paints needs none
    expect(colourWalls(meeting, 1, () => 'one')).toBe(meeting);
  });
});
