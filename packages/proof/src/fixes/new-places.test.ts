import { applyTransform, type Point, scaling } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import { newPlaces } from './new-places.ts';

const STILL = { to: (place: FindingPlace): FindingPlace => place, slackMm: 1 };

const found = (...where: readonly FindingPlace[]): Finding => ({
  code: 'short-grain-will-break',
  severity: 'caution',
  where: [...where],
  measured: { value: 0.5, quantity: 'width', unit: 'mm' },
  limit: { value: 1, quantity: 'width', unit: 'mm' },
  because: ['own-inference'],
  fix: { options: [] },
});
const line = (...points: Point[]): FindingPlace => ({
  atMm: points[0] as Point,
  outline: [points],
  what: 'wood',
});
const area = (...points: Point[]): FindingPlace => ({ ...line(...points), what: 'floor', areaMm2: 1 });
const square = (x: number, y: number, side: number): FindingPlace =>
  area([x, y], [x + side, y], [x + side, y + side], [x, y + side]);
const count = (after: Finding, ...before: Finding[]): number => newPlaces(after, before, STILL).length;

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const anyPoint = fc.tuple(coordinate, coordinate);
const anyPlace: fc.Arbitrary<FindingPlace> = fc.oneof(
  anyPoint.map((atMm): FindingPlace => ({ atMm, outline: [], what: 'island' })),
  fc.array(anyPoint, { minLength: 2, maxLength: 6 }).map((points) => line(...points)),
  fc.array(anyPoint, { minLength: 3, maxLength: 6 }).map((points) => area(...points)),
);

test('no place is new where it was, also in a larger size', () => {
  fc.assert(
    fc.property(fc.array(anyPlace, { minLength: 1, maxLength: 5 }), fc.constantFrom(1, 1.5), (where, by) => {
      const at = (point: Point): Point => applyTransform(scaling(by), point);
      const to = (place: FindingPlace): FindingPlace => ({
        ...place,
        atMm: at(place.atMm),
        outline: place.outline.map((points) => points.map(at)),
      });
      expect(newPlaces(found(...where.map(to)), [found(...where)], { to, slackMm: 1e-9 })).toEqual([]);
    }),
  );
});

test('what is farther off than the slack is new, and nearer is not', () => {
  const before = found(line([0, 0], [10, 0]));
  expect(count(found(line([3, 0.9], [20, 0.9])), before)).toBe(0);
  expect(count(found(line([3, 1.1], [20, 1.1])), before)).toBe(1);
  // lines that cross have no end near the other
  expect(count(found(line([5, -20], [5, 20])), before)).toBe(0);
  expect(count(found(line([0, 0], [10, 0]), line([0, 5], [10, 5])), before)).toBe(1);
  // their boxes overlap, but they stay 2.8 mm apart, whichever end is nearest
  const slanting = found(line([0, 4], [10, 14]));
  expect(count(found(line([4, 4], [14, 14])), slanting)).toBe(1);
  expect(count(slanting, found(line([4, 4], [14, 14])))).toBe(1);
  // one ends short of the other
  expect(count(found(line([5, 1.1], [5, 9])), before)).toBe(1);
  expect(count(found(line([5, 0.9], [5, 9])), before)).toBe(0);
});

describe('an area that shrinks or grows within its own bounds', () => {
  test('is the same place', () => {
    expect(count(found(square(10, 10, 5)), found(square(0, 0, 30)))).toBe(0);
    expect(count(found(square(0, 0, 30)), found(square(10, 10, 5)))).toBe(0);
    expect(count(found(square(40, 10, 5)), found(square(0, 0, 30)))).toBe(1);
  });

  test('but a line round a place does not enclose it', () => {
    const round = line([0, 0], [30, 0], [30, 30], [0, 30], [0, 2]);
    expect(count(found(square(10, 10, 5)), found(round))).toBe(1);
  });
});

test('a finding of the whole job has no place, so that none is new', () => {
  expect(count(found(), found())).toBe(0);
  expect(count(found(square(0, 0, 1)), found())).toBe(1);
});
