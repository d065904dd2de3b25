import { booleans, resolveRegions } from '@pourproof/arrangement';
import { sweepAlong, sweptArea, woodAlong } from '@pourproof/geometry';
import {
  type CleanRegion,
  compose,
  packRings,
  rotation,
  signedArea,
  type Transform,
  transformRings,
} from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { isWithin, onlyCrosses } from './is-within.ts';

const region = (...ring: number[]): CleanRegion =>
  resolveRegions([{ ...packRings([ring]), fillRule: 'nonzero' }]).region;
const square = region(0, 0, 10, 0, 10, 10, 0, 10);

test('within a block is what keeps off all of its edges', () => {
  expect(isWithin(region(1, 1, 9, 1, 9, 9), square)).toBe(true);
  expect(isWithin(region(0, 1, 9, 1, 9, 9), square)).toBe(false);
  expect(isWithin(region(1, 1, 12, 1, 9, 9), square)).toBe(false);
  // an L, which is not convex
  expect(isWithin(region(1, 1, 2, 1, 2, 2), region(0, 0, 10, 0, 10, 3, 3, 3, 3, 10, 0, 10))).toBe(false);
});

test('a cut crosses edges, or has a wall along one', () => {
  expect(onlyCrosses(region(-2, 3, 4, 3, 4, 5), square)).toBe(true);
  expect(onlyCrosses(region(0, 3, 4, 3, 4, 5, 0, 5), square)).toBe(false);
  expect(onlyCrosses(region(-4, 3, 0, 3, 0, 5, -4, 5), square)).toBe(false);
});

test('of a cut that only crosses the edges of a block, the wood that it reaches there is told without its band', () => {
  fc.assert(
    fc.property(anyPolygon, fc.double({ min: 0, max: 3, noNaN: true }), (shape, grainRad) => {
      const size = Math.sqrt(signedArea(shape));
      const share = size / 10;
      const [x, y] = [shape.coords[0] as number, shape.coords[1] as number];
      const place: Transform = [share, 0, 0, share, x, y];
      const block = transformRings(compose(place, rotation(1)), square) as CleanRegion;
      fc.pre(onlyCrosses(shape, block));
      const inBlock = booleans(shape, block, 'intersect');
      const reach = size / 7;
      const band = booleans(sweepAlong(inBlock, grainRad, reach).region, block, 'intersect');
      const want = signedArea(booleans(band, shape, 'subtract'));
      const got = sweptArea(woodAlong(inBlock, grainRad, block), reach);
      expect(Math.abs(got - want)).toBeLessThan(1e-4 * size * size + 1e-6);
    }),
    cases(15),
  );
});
