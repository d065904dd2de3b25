import { readFileSync } from 'node:fs';
import { holeCount, outerRingCount, resolveRegions } from '@pourproof/arrangement';
import { readLettering, readStickLettering } from '@pourproof/artwork';
import { type DrawnShape, signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';

const font = new Uint8Array(
  readFileSync(new URL('../../../fixtures/fonts/dancing-script-400.ttf', import.meta.url)),
);
const union = (shapes: readonly DrawnShape[]) => resolveRegions(shapes.map((shape) => shape.region)).region;

test.each([
  ['handmade', 1, 2],
  ['and', 1, 0],
  ['maple lane', 3, 4],
])(
  'joined letters of "%s" become one area each word or stroke, and no hole but those of the letters',
  async (text, outer, holes) => {
    const { shapes } = await readLettering(text, { font, capHeightMm: 18 });
    const whole = union(shapes);
    const parts = shapes.map((shape) => union([shape]));
    // seen on the picture: the loops of h, l and e are holes, the others stay open; p of "maple" does not touch the l
    expect(outerRingCount(whole)).toBe(outer);
    expect(holeCount(whole)).toBe(holes);
    expect(parts.reduce((sum, part) => sum + holeCount(part), 0)).toBe(holes);
    // overlaps count once
    const sum = parts.reduce((total, part) => total + signedArea(part), 0);
    expect(signedArea(whole)).toBeLessThan(sum);
    expect(signedArea(whole)).toBeGreaterThan(0.95 * sum);
  },
);

test('turning the lettering on a wide arc keeps the joins', async () => {
  const { shapes } = await readLettering('handmade', { font, capHeightMm: 18, arc: { radiusMm: 400 } });
  expect(outerRingCount(union(shapes))).toBe(1);
  expect(holeCount(union(shapes))).toBe(2);
});

test('single-line letters have the holes that such letters have', () => {
  const { shapes } = readStickLettering('ABCDOPQR8abdegopq', { capHeightMm: 20, strokeMm: 2 });
  expect(shapes.map((shape) => holeCount(union([shape])))).toEqual([
    1, 2, 0, 1, 1, 1, 1, 1, 2, 1, 1, 1, 1, 1, 1, 1, 1,
  ]);
  expect(shapes.every((shape) => outerRingCount(union([shape])) === 1)).toBe(true);
});

test('a ring of single-line lettering has the area of its centre line times the stroke', () => {
  // O: two half circles of radius 4 and two straight sides of 4 on a grid of 12 to the capital
  const strokeMm = 2;
  const unit = (26 - strokeMm) / 12;
  const { shapes } = readStickLettering('O', { capHeightMm: 26, strokeMm });
  const length = (2 * Math.PI * 4 + 2 * 4) * unit;
  // each piece keeps its area; where pieces meet, the union moves by the tolerance times the width
  expect(Math.abs(signedArea(union(shapes)) - length * strokeMm)).toBeLessThan(4 * 0.005 * strokeMm);
});
