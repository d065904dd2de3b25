import { resolveRegions } from '@pourproof/arrangement';
import { type Bounds, packRings, signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { outlineBand } from './outline-band.ts';

const EVERYWHERE: Bounds = [-1000, -1000, 1000, 1000];
const SQUARE = [0, 0, 10, 0, 10, 10, 0, 10];

const areaOf = (ring: readonly number[], radiusMm: number, boxes: readonly Bounds[] = [EVERYWHERE]): number =>
  signedArea(resolveRegions([outlineBand(packRings([ring]), boxes, radiusMm)]).region);

test('the band along a square is a frame with sharp corners, whichever way the square runs', () => {
  // (10 + 2 r)² − (10 − 2 r)² = 80 r
  expect(areaOf(SQUARE, 1)).toBeCloseTo(80, 9);
  expect(areaOf([0, 10, 10, 10, 10, 0, 0, 0], 1)).toBeCloseTo(80, 9);
  // a corner named twice is one
  expect(areaOf([0, 0, 10, 0, 10, 0, 10, 10, 0, 10], 1)).toBeCloseTo(80, 9);
});

test.each([
  ['right', [9, 4, 20, 6]],
  ['left', [-20, 4, 1, 6]],
  ['lower', [4, 9, 6, 20]],
  ['upper', [4, -20, 6, 1]],
] as const)('a box at the %s side takes that edge alone, flush at both ends', (_side, box) => {
  expect(areaOf(SQUARE, 1, [box])).toBeCloseTo(2 * 10, 9);
});

test('boxes that only touch an edge take it, and boxes beside the outline take nothing', () => {
  expect(areaOf(SQUARE, 1, [[10, 4, 20, 6]])).toBeCloseTo(20, 9);
  expect(areaOf(SQUARE, 1, [[11, 4, 20, 6]])).toBe(0);
  expect(areaOf(SQUARE, 1, [[4, 4, 6, 6]])).toBe(0);
});

test('two edges at a corner have the corner between them, sharp up to four times the distance', () => {
  expect(areaOf(SQUARE, 1, [[9, 4, 20, 20]])).toBeCloseTo(2 * 10 + 2 * 10 + 1 - 1, 9);
  // a wedge of 20°: its point would lie 1/sin 10° = 5.8 times as far, so that it is rounded
  const half = (10 * Math.PI) / 180;
  const wedge = [0, 0, 40, -40 * Math.tan(half), 40, 40 * Math.tan(half)];
  const region = resolveRegions([outlineBand(packRings([wedge]), [[-5, -1, 2, 1]], 1)]).region;
  const xs = Array.from(region.coords).filter((_, k) => k % 2 === 0);
  expect(Math.min(...xs)).toBeGreaterThan(-1.02);
  expect(Math.min(...xs)).toBeLessThan(-0.99);
});

test('points along a straight edge add nothing', () => {
  expect(areaOf([0, 0, 3, 0, 7, 0, 10, 0, 10, 10, 0, 10], 1)).toBeCloseTo(80, 9);
});

test('where an outline runs out and back along a line, the band goes round its end', () => {
  const withHair = [0, 0, 10, 0, 10, 10, 5, 10, 5, 15, 5, 10, 0, 10];
  const { region } = resolveRegions([outlineBand(packRings([withHair]), [EVERYWHERE], 1)]);
  // the tip of a polygon of 24 sides around a circle of 1 mm
  expect(Math.max(...region.coords.filter((_, k) => k % 2 === 1))).toBeCloseTo(
    15 + 1 / Math.cos(Math.PI / 24),
    9,
  );
});

test('each edge of an outline has one edge on either side of the band, so that a circle stays one', () => {
  const sides = 48;
  const circle = Array.from({ length: sides }, (_, k) => (2 * Math.PI * k) / sides).flatMap((angle) => [
    10 * Math.cos(angle),
    10 * Math.sin(angle),
  ]);
  const band = resolveRegions([outlineBand(packRings([circle]), [EVERYWHERE], 0.25)]).region;
  expect(band.ringEnds.length).toBe(2);
  // but for points that rounding sets beside the one they are
  const points = new Set(
    Array.from({ length: band.coords.length / 2 }, (_, i) =>
      [band.coords[2 * i], band.coords[2 * i + 1]].map((value) => value?.toFixed(6)).join(),
    ),
  );
  expect(points.size).toBe(2 * sides);
});
