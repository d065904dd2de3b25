import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyTransform,
  compose,
  determinant,
  rotation,
  scaling,
  type Transform,
  translation,
} from './transform.ts';

const number = fc.double({ min: -10, max: 10, noNaN: true });
const anyMap = fc.tuple(number, number, number, number, number, number) as fc.Arbitrary<Transform>;

test('a composed map does first what the inner one does, then what the outer one does', () => {
  fc.assert(
    fc.property(anyMap, anyMap, fc.tuple(number, number), (outer, inner, at) => {
      const [x, y] = applyTransform(compose(outer, inner), at);
      const [u, v] = applyTransform(outer, applyTransform(inner, at));
      expect(x).toBeCloseTo(u, 9);
      expect(y).toBeCloseTo(v, 9);
      expect(determinant(compose(outer, inner))).toBeCloseTo(determinant(outer) * determinant(inner), 8);
    }),
  );
});

test('a turn goes from +x towards +y, after a scaling and before a translation', () => {
  const map = compose(translation(10, 0), compose(rotation(Math.PI / 2), scaling(2, 3)));
  const [x, y] = applyTransform(map, [1, 1]);
  expect(x).toBeCloseTo(10 - 3, 12);
  expect(y).toBeCloseTo(2, 12);
});
