import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packRings, perimeter, ringArea, ringCoords, ringsBounds, signedArea } from './region.ts';
import {
  applyTransform,
  compose,
  determinant,
  rotation,
  scaling,
  transformRings,
  translation,
} from './transform.ts';

const SQUARE = [0, 0, 4, 0, 4, 4, 0, 4];
const HOLE = [1, 1, 1, 2, 2, 2, 2, 1];

test('a ring that turns from +x to +y has positive area, its reverse negative', () => {
  expect(ringArea(SQUARE)).toBe(16);
  expect(ringArea(HOLE)).toBe(-1);
  expect(ringArea([0, 0, 1, 1])).toBe(0);
});

test('packed rings keep their points, bounds, area and perimeter', () => {
  const rings = packRings([SQUARE, HOLE]);
  expect([...rings.ringEnds]).toEqual([4, 8]);
  expect([...ringCoords(rings, 1)]).toEqual(HOLE);
  expect(signedArea(rings)).toBe(15);
  expect(perimeter(rings)).toBe(20);
  expect(ringsBounds(rings)).toEqual([0, 0, 4, 4]);
});

test('area far from the origin keeps its digits', () => {
  const far = transformRings(translation(1e7, -1e7), packRings([SQUARE]));
  expect(signedArea(far)).toBe(16);
});

test('an affine map multiplies area by its determinant, and maps compose', () => {
  const number = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(number, number, number, number, (angle, sx, sy, move) => {
      const map = compose(translation(move, -move), compose(rotation(angle), scaling(sx, sy)));
      const rings = transformRings(map, packRings([SQUARE]));
      expect(signedArea(rings)).toBeCloseTo(16 * determinant(map), 6);
      const [x, y] = applyTransform(map, [4, 4]);
      expect([x, y]).toEqual([rings.coords[4], rings.coords[5]]);
    }),
  );
});
