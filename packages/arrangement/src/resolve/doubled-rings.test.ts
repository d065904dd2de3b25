import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { doubledRings } from './doubled-rings.ts';

/** The doubled rings of some rings, each a shape of its own, whose equal points are one vertex. */
function doubledOf(...rings: readonly (readonly number[])[]) {
  const packed = packRings(rings);
  const vertices = new Map<string, number>();
  const count = packed.coords.length / 2;
  const vertexOfPoint = Uint32Array.from({ length: count }, (_, i) => {
    const key = `${packed.coords[2 * i]},${packed.coords[2 * i + 1]}`;
    const known = vertices.get(key) ?? vertices.size;
    vertices.set(key, known);
    return known;
  });
  const shapeOfEdge = Uint32Array.from({ length: count }, (_, i) =>
    packed.ringEnds.findIndex((end) => i < end),
  );
  return doubledRings(packed, shapeOfEdge, vertexOfPoint);
}

const TRIANGLE = [30, 1, 40, 2, 35, 9];

test('a ring that repeats an earlier one is told with both shapes, its area and its own first point', () => {
  expect(doubledOf([0, 0, 10, 0, 0, 10], TRIANGLE, [40, 2, 35, 9, 30, 1])).toEqual([
    { regions: [1, 2], areaMm2: 37.5, atMm: [40, 2] },
  ]);
});

test('the direction, the starting point and points named twice make no difference, other corners do', () => {
  const at = (ring: readonly number[]) => doubledOf(TRIANGLE, ring).map(({ regions }) => regions);
  expect(at([35, 9, 40, 2, 30, 1])).toEqual([[0, 1]]);
  expect(at([40, 2, 40, 2, 35, 9, 30, 1, 40, 2])).toEqual([[0, 1]]);
  expect(at([30, 1, 40, 2, 35, 8])).toEqual([]);
});

test('every further repeat names the first that drew it', () => {
  expect(doubledOf(TRIANGLE, TRIANGLE, TRIANGLE).map(({ regions }) => regions)).toEqual([
    [0, 1],
    [0, 2],
  ]);
});

test('lines there and back enclose nothing and are no outlines', () => {
  expect(doubledOf([0, 0, 10, 0], [0, 0, 10, 0], [5, 5], [5, 5])).toEqual([]);
});
