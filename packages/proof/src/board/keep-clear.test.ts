import type { Board, Obstacle } from '@pourproof/job';
import { signedArea, translation } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { clearFace } from './keep-clear.ts';

const BOARD: Board = { widthMm: 200, heightMm: 100, thicknessMm: 20, blocks: [] };
const PLACED = { blocks: [], toBoard: translation(-300, 40), toArtwork: translation(300, -40) };

const areaWith = (obstacles: readonly Obstacle[], marginMm = 0): number =>
  signedArea(clearFace(BOARD, marginMm, obstacles, PLACED));

// holes are circumscribed by 64 sides: their area is that of the circle times tan(π/64)/(π/64)
const ROUND = (64 / Math.PI) * Math.tan(Math.PI / 64);

test('a margin all around leaves the inner rectangle, one of half the board nothing', () => {
  expect(areaWith([])).toBeCloseTo(20_000, 6);
  expect(areaWith([], 10)).toBeCloseTo(180 * 80, 6);
  expect(areaWith([], 50)).toBe(0);
});

test('a hole takes its disc, a slanting groove its straight part and a disc at both ends', () => {
  const disc = (diameter: number) => (ROUND * Math.PI * diameter ** 2) / 4;
  expect(areaWith([{ kind: 'hole', atMm: [50, 50], diameterMm: 12 }])).toBeCloseTo(20_000 - disc(12), 6);
  // 3-4-5: 50 mm long, not along either axis
  const groove: Obstacle = { kind: 'groove', fromMm: [60, 30], toMm: [90, 70], widthMm: 8 };
  // the circumscribed ends stand a little proud of the straight part's ends: by less than their surplus
  expect(Math.abs(areaWith([groove]) - (20_000 - 50 * 8 - disc(8)))).toBeLessThan(disc(8) * (1 - 1 / ROUND));
  const dot: Obstacle = { kind: 'groove', fromMm: [60, 30], toMm: [60, 30], widthMm: 8 };
  expect(areaWith([dot])).toBeCloseTo(20_000 - disc(8), 6);
});
