import {
  leftStanding,
  type MedialAxis,
  medialAxis,
  narrowStretches,
  separateParts,
  strokeLines,
  strokeWidths,
} from '@pourproof/geometry';
import { type CleanRegion, packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, letters } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';
import {
  byFirst,
  expectSame,
  moved,
  movedRegion,
  moves,
  rosette,
  star,
  symmetric,
  touches,
} from '../support/shapes/moved.ts';

/** Every public measure of strokes in numbers that have no place and no order. */
function measures(axis: MedialAxis) {
  const widths = strokeWidths(axis);
  const sizes = [0.3, 1, 3, 7];
  const stretches = (limit: number) =>
    narrowStretches(axis, limit).toSorted((a, b) => a.lengthMm - b.lengthMm);
  const total = (kind: string) => strokeLines(axis).filter((line) => line.kind === kind);
  return {
    narrowest: widths.narrowestMm,
    length: widths.lengthMm,
    histogram: [...widths.histogram([0, ...sizes, 1000])],
    tapers: widths.tapers && [widths.tapers.narrowestMm, widths.tapers.widestMm, widths.tapers.lengthMm],
    tapersBelow: sizes.map((size) => widths.tapers?.lengthNarrowerThan(size) ?? 0),
    below: sizes.map(widths.lengthNarrowerThan),
    stretches: sizes.map((limit) =>
      stretches(limit).map(({ lengthMm, extentMm, narrowestMm }) => [lengthMm, extentMm, narrowestMm]),
    ),
    kinds: sizes.map((limit) =>
      stretches(limit)
        .map(({ kind }) => kind)
        .sort(),
    ),
    widestOfLines: ['stroke', 'taper'].map((kind) =>
      Math.max(0, ...total(kind).flatMap((line) => [...line.widths])),
    ),
    parts: separateParts(axis)
      .map(({ widthMm, strokeMm }) => [widthMm, strokeMm])
      .toSorted(byFirst),
    standing: sizes.map((bit) =>
      leftStanding(axis, bit / 2, 0.005)
        .pieces.map((piece) => [
          piece.areaMm2,
          piece.shortMm ?? -1,
          piece.widestMm,
          piece.lengthMm,
          piece.mouths,
          piece.narrowestMm ?? -1,
          piece.meanWidthMm,
          piece.branch?.reachMm ?? -1,
          piece.branch?.widthMm ?? -1,
        ])
        .toSorted(byFirst),
    ),
  };
}

describe('no measure of strokes hangs on how artwork is turned, mirrored, subdivided or begun', () => {
  test('of symmetric shapes', () => {
    fc.assert(
      fc.property(symmetric, moves, (ring, move) => {
        expectSame(
          measures(medialAxis(cleanFrom([moved(ring, move)]))),
          measures(medialAxis(cleanFrom([ring]))),
        );
      }),
      cases(150),
    );
  });

  test('of any polygon', () => {
    fc.assert(
      fc.property(
        anyPolygon.filter((region) => !touches(region)),
        moves,
        (region, move) => {
          expectSame(measures(medialAxis(movedRegion(region, move))), measures(medialAxis(region)));
        },
      ),
      cases(150),
    );
  });

  test('of letters', async () => {
    await fc.assert(
      fc.asyncProperty(letters, moves, async ({ text, face, capHeightMm }, move) => {
        const region = await lettered(text, face, capHeightMm, 0.005);
        expectSame(measures(medialAxis(movedRegion(region, move))), measures(medialAxis(region)));
      }),
      cases(8),
    );
  });

  test('nor does the reach of a tip that ends in a stroke of even width', async () => {
    const region = await lettered('a', 'bodoni-moda-400.ttf', 5, 0.005);
    const move = { turn: 0.5543701171875, isMirrored: false, x: -256.26, y: -300, first: 0, splits: [] };
    expectSame(measures(medialAxis(movedRegion(region, move))), measures(medialAxis(region)));
  });

  test.each([
    ['the mean width of a corner beside a point flush in its flank', rosette(9, 5, 0.05), [0.05]],
    ['where a petal ends in its flower', rosette(9, 5, 0.23757076263427734), [0.05]],
    [
      'whether tips that meet in one place hang together',
      star(20, 5.143790245056152, 0.7715685367584229),
      [],
    ],
  ])('nor does %s', (_, ring, splits) => {
    const move = { turn: -3.2, isMirrored: false, x: -300, y: -300, first: 0, splits };
    expectSame(measures(medialAxis(cleanFrom([moved(ring, move)]))), measures(medialAxis(cleanFrom([ring]))));
  });

  test('a region has a narrowest width if, and only if, it is not empty', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          symmetric.map((ring) => cleanFrom([ring])),
          anyPolygon,
        ),
        (region) => {
          expect(strokeWidths(medialAxis(region)).narrowestMm).toBeGreaterThan(0);
        },
      ),
      cases(150),
    );
    expect(strokeWidths(medialAxis(packRings([]) as CleanRegion)).narrowestMm).toBeNull();
  });
});
