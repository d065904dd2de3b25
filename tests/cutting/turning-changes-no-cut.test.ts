import {
  ballCutter,
  bullNoseCutter,
  type CarveStep,
  carve,
  flatCutter,
  taperedBallCutter,
} from '@pourproof/cutting';
import { arcRingsArea, medialAxis } from '@pourproof/geometry';
import { type CleanRegion, type Point, ringsBounds } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, letters, share } from '../arbitraries.ts';
import { clear, veeOf } from '../support/carve-steps.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, regular } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';
import {
  expectSame,
  type Move,
  movedPoint,
  movedRegion,
  moves,
  symmetric,
  touches,
} from '../support/shapes/moved.ts';

const vee = veeOf(20);

const JOBS: readonly (readonly [string, readonly CarveStep[]])[] = [
  ['flat', [clear(flatCutter(1.3))]],
  ['two flats', [clear(flatCutter(3.1)), clear(flatCutter(0.7), 0.9)]],
  ['ball', [clear(ballCutter(1.7))]],
  ['bull nose', [clear(bullNoseCutter(1.9, 0.3))]],
  ['tapered ball', [clear(taperedBallCutter({ tipDiameterMm: 0.4, sideRad: 0.1, diameterMm: 6 }))]],
  ['true tip', [vee(60)]],
  ['tip flat', [vee(70, { tipFlatMm: 0.2 })]],
  ['true tip, then a flat', [vee(90), clear(flatCutter(1.1))]],
];

/** Every public figure of a cut 1.4 mm deep, with its depths at places. */
function measures(region: CleanRegion, steps: readonly CarveStep[], places: readonly Point[]) {
  const cut = carve(medialAxis(region), steps, { depthMm: 1.4 });
  return {
    areas: [cut.areaMm2, cut.floorAreaMm2, cut.ledgeAreaMm2, cut.scallopedFloorMm2],
    depth: cut.maxDepthMm,
    outline: arcRingsArea(cut.outline),
    slices: [0, 0.37, 1.1].map((depth) => cut.sliceArea(depth)),
    bits: cut.perCutter.map((added) => [
      added.areaMm2,
      added.floorMm2,
      added.lengthMm,
      added.depthMm,
      added.places.length,
    ]),
    depths: places.map(([x, y]) => cut.depthAt(x, y)),
    bounded: [
      [cut.volumeMm3, cut.volumeErrorMm3],
      [cut.wallAreaMm2, cut.wallAreaErrorMm2],
      // of one bit no bound is stated: that of all is of their integrals together
      ...cut.perCutter.map((added) => [added.volumeMm3, cut.volumeErrorMm3] as const),
    ] as const,
  };
}

function expectSameCut(
  region: CleanRegion,
  move: Move,
  steps: readonly CarveStep[],
  shares: readonly (readonly [number, number])[],
): void {
  const [left, top, right, bottom] = ringsBounds(region);
  const places = shares.map(([u, v]): Point => [left + u * (right - left), top + v * (bottom - top)]);
  const there = places.map((place) => movedPoint(place, move));
  const { bounded: got, ...exact } = measures(movedRegion(region, move), steps, there);
  const { bounded: want, ...exactly } = measures(region, steps, places);
  expectSame(exact, exactly);
  // integrals that end within a bound may end elsewhere
  for (const [k, [value, error]] of want.entries()) {
    const off = Math.abs(got[k][0] - value);
    expect(off, `${got[k][0]} for ${value}`).toBeLessThanOrEqual(error + got[k][1] + 1e-6 * (1 + value));
  }
}

const somePlaces = fc.array(fc.tuple(share, share), { minLength: 4, maxLength: 4 });

describe.each(JOBS)(
  'no figure of a cut hangs on how artwork is turned, mirrored, subdivided or begun: %s',
  (_, steps) => {
    test('symmetric shapes', () => {
      fc.assert(
        fc.property(symmetric, moves, somePlaces, (ring, move, places) => {
          expectSameCut(cleanFrom([ring]), move, steps, places);
        }),
        cases(12),
      );
    });

    test('any polygon', () => {
      fc.assert(
        fc.property(
          anyPolygon.filter((region) => !touches(region)),
          moves,
          somePlaces,
          (region, move, places) => expectSameCut(region, move, steps, places),
        ),
        cases(12),
      );
    });

    test('letters', async () => {
      await fc.assert(
        fc.asyncProperty(letters, moves, somePlaces, async ({ text, face, capHeightMm }, move, places) => {
          expectSameCut(await lettered(text, face, capHeightMm, 0.005), move, steps, places);
        }),
        cases(2),
      );
    });
  },
);

/** A star of 22 tips, whose tips are bounded by cells no wider than rounding where arms meet: so placed that turning it swapped them. */
const starOf22 = (outer: number, inner: number): number[] =>
  regular(44, 1).map((v, i) => v * ((i >> 1) % 2 === 0 ? outer : inner));

test.each([
  ['ball', 28.187828063964844, 7.294013419188558, [0.6664485931396484, 0.6033792495727539]],
  ['bull nose', 28.187780380249023, 7.293743013491621, [0.3333425521850586, 0.6082057952880859]],
] as const)(
  'the depth beside an arm of a star is that of its own cell, turned or not: %s',
  (name, outer, inner, at) => {
    const steps = JOBS.find(([job]) => job === name)?.[1] ?? [];
    const move = { turn: -3.2, isMirrored: false, x: -300, y: -300, first: 0, splits: [] };
    expectSameCut(cleanFrom([starOf22(outer, inner)]), move, steps, [at]);
  },
);
