import { resolveRegions } from '@pourproof/arrangement';
import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { separateParts } from './separate-parts.ts';

const box = (x: number, y: number, width: number, height: number, turn = 0): number[] =>
  [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ].flatMap(([u = 0, v = 0]) => [
    x + u * Math.cos(turn) - v * Math.sin(turn),
    y + u * Math.sin(turn) + v * Math.cos(turn),
  ]);
const disc = (x: number, y: number, radius: number): number[] =>
  Array.from({ length: 200 }, (_, k) => (2 * Math.PI * k) / 200).flatMap((angle) => [
    x + radius * Math.cos(angle),
    y + radius * Math.sin(angle),
  ]);
const partsOf = (...rings: readonly number[][]) =>
  separateParts(medialAxis(resolveRegions([{ ...packRings(rings), fillRule: 'nonzero' }]).region)).toSorted(
    (a, b) => a.atMm[0] - b.atMm[0],
  );

test.each([0, 0.3, Math.PI / 4])(
  'a square turned by %s rad is one part without a stroke, as wide as it is',
  (turn) => {
    const [square, ...more] = partsOf(box(0, 0, 40, 40, turn));
    expect(more).toEqual([]);
    expect(square?.strokeMm).toBe(0);
    expect(square?.widthMm).toBeCloseTo(40, 9);
  },
);

test('a disc has its centre and its diameter, whatever stands beside it', () => {
  const all = partsOf(disc(5, 5, 3), box(20, 0, 60, 6), box(100, 0, 10, 10));
  expect(all).toHaveLength(3);
  const parts = all.filter(({ strokeMm }) => strokeMm === 0);
  expect(parts).toHaveLength(2);
  expect(parts[0]?.widthMm).toBeCloseTo(6 * Math.cos(Math.PI / 200), 6);
  expect(parts[0]?.atMm[0]).toBeCloseTo(5, 3);
  expect(parts[0]?.atMm[1]).toBeCloseTo(5, 3);
  expect(parts[1]?.widthMm).toBeCloseTo(10, 9);
});

test('a bar carries a stroke, and nothing has no part', () => {
  const [bar] = partsOf(box(0, 0, 60, 6));
  expect(bar?.strokeMm).toBeCloseTo(6, 9);
  expect(bar?.widthMm).toBeCloseTo(6, 9);
  expect(partsOf()).toEqual([]);
});
