import { type Drawing, type Point, scaling, transformRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { drawingOf } from '../../../../tests/support/drawing-of.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { FixStep } from '../report/fix-schema.ts';
import { factorOf, movedBy } from './moved-by.ts';

const rectangle = (x: number, y: number, width: number, height: number): number[] => [
  ...[x, y, x + width, y, x + width, y + height, x, y + height],
];

const drawn = (...rings: readonly (readonly number[])[]): Drawing => drawingOf(rings);
const at = (...points: Point[]): FindingPlace => ({
  atMm: points[0] as Point,
  outline: [points],
  what: 'stroke',
});
const TRACK: FixStep = { do: 'track', byMm: 2, clears: true };

test('a place goes with the outline that it lies on, however each is moved and stretched', () => {
  const before = drawn(rectangle(0, 0, 10, 10), rectangle(20, 0, 4, 8));
  const after = drawn(rectangle(-1, 0, 10, 10), rectangle(21, 5, 8, 4));
  const { to } = movedBy([TRACK], before, after);
  expect(to(at([1, 2], [3, 4]))).toEqual(at([0, 2], [2, 4]));
  // twice as wide and half as high from its upper left corner
  expect(to(at([21, 2], [24, 8]))).toEqual(at([23, 6], [29, 9]));
  // beside both it goes with the nearer one
  expect(to(at([19, 4])).atMm).toEqual([19, 7]);
});

test('of outlines around a place the smallest takes it along', () => {
  const before = drawn(rectangle(0, 0, 40, 40), rectangle(10, 10, 5, 5));
  const after = drawn(rectangle(0, 0, 40, 40), rectangle(13, 10, 5, 5));
  expect(movedBy([TRACK], before, after).to(at([12, 12])).atMm).toEqual([15, 12]);
});

test('where outlines are others, or as many more, the artwork is scaled as a whole', () => {
  const before = drawn(rectangle(10, 10, 10, 10));
  const scale: FixStep = { do: 'scale', factor: 2, clears: true };
  const twice = movedBy([scale, scale], before, drawn(rectangle(40, 40, 40, 40), rectangle(0, 0, 1, 1)));
  expect(factorOf([scale, TRACK, scale])).toBe(4);
  expect(twice.to(at([11, 12])).atMm).toEqual([44, 48]);
  const widen: FixStep = { do: 'widen', what: 'stroke', byMm: 0.4, clears: true };
  expect(movedBy([widen], before, drawn(rectangle(0, 0, 9, 9))).to(at([11, 12])).atMm).toEqual([11, 12]);
  expect(movedBy([], before, before).to(at([11, 12])).atMm).toEqual([11, 12]);
});

test('places that a way out moves by itself are one that much farther apart', () => {
  const one = drawn(rectangle(0, 0, 10, 10));
  const { region } = one.shapes[0] as Drawing['shapes'][number];
  const larger = { ...transformRings(scaling(1), region), fillRule: 'nonzero' as const };
  const other = { ...one, shapes: one.shapes.map((shape) => ({ ...shape, region: larger })) };
  const slack = (...steps: FixStep[]): number => movedBy(steps, one, other).slackMm;
  expect(slack()).toBe(1);
  expect(slack(TRACK)).toBe(3);
  expect(slack({ do: 'part-by-wall', widthMm: 0.5, clears: true }, TRACK)).toBe(3.5);
  expect(slack({ do: 'deepen', byMm: 9, clears: true })).toBe(1);
});
