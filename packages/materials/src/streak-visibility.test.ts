import { expect, test } from 'vitest';
import { ciede2000 } from './colour-difference.ts';
import { limits } from './limits.ts';
import { type ResinColourId, resinColours } from './resin-colour.ts';
import { bleedIndex, streakColour, streakDifference } from './streak-visibility.ts';
import { type WoodId, woods } from './wood.ts';

// ΔE00 of wood against opaque resin, computed apart from this code, to one decimal
const CONTRAST: readonly [WoodId, Readonly<Record<ResinColourId, number>>][] = [
  ['poplar', { black: 62.8, blue: 61.5, white: 17.1, red: 45.1 }],
  ['cherry', { black: 45.9, blue: 50.0, white: 26.5, red: 32.1 }],
  ['maple', { black: 66.6, blue: 60.9, white: 15.1, red: 44.3 }],
  ['walnut', { black: 26.6, blue: 36.1, white: 40.4, red: 22.5 }],
];

test.each(CONTRAST)('%s against four resin colours', (wood, row) => {
  for (const [colour, difference] of Object.entries(row)) {
    const lab = resinColours[colour as ResinColourId].value;
    expect(ciede2000(woods[wood].lab!.value, lab)).toBeCloseTo(difference, 1);
  }
});

test('a streak shows between nothing and the full colour', () => {
  const wood = woods.maple.lab!.value;
  const black = resinColours.black.value;
  expect(streakDifference(wood, black, 0)).toBe(0);
  expect(streakColour(wood, black, 1)).toEqual(black);
  const tints = [0.1, 0.2, 0.4, 0.6, 1].map((share) => streakDifference(wood, black, share));
  expect(tints).toEqual([...tints].sort((a, b) => a - b));
});

test('walnut hides black resin and shows white most; maple the reverse', () => {
  const shows = (wood: WoodId, colour: ResinColourId) =>
    streakDifference(woods[wood].lab!.value, resinColours[colour].value, 0.4);
  expect(shows('walnut', 'black')).toBeLessThan(shows('walnut', 'white'));
  expect(shows('maple', 'black')).toBeGreaterThan(shows('maple', 'white'));
});

// 1 − exp(−m/2) for a wall across the grain and a fully visible colour
test.each([
  [6, 0.95],
  [3, 0.777],
  [2, 0.632],
  [1, 0.393],
  [0.36, 0.165],
  [0.12, 0.058],
])('median %d mm gives index %d', (medianMm, index) => {
  expect(bleedIndex(medianMm, 1, 40)).toBeCloseTo(index, 3);
});

test('no exposure or no contrast gives no index', () => {
  expect(bleedIndex(6, 0, 40)).toBe(0);
  expect(bleedIndex(6, 1, 0)).toBe(0);
});

test('a streak is tinted by the share of a face that vessels take, number times diameter squared', () => {
  // tangential diameter in mm and number per mm² of hard maple, black cherry and black walnut: wood-descriptions
  const shares = [
    [0.065, 38],
    [0.05, 90],
    [0.135, 8],
  ].map(([diameterMm = 0, perMm2 = 0]) => perMm2 * diameterMm ** 2);
  const { value, low, high } = limits.streakTint;
  expect(Math.min(...shares)).toBeGreaterThan(low - 0.01);
  expect(Math.max(...shares)).toBeLessThan(high);
  expect(value).toBeGreaterThan(Math.min(...shares));
  expect(value).toBeLessThan(Math.max(...shares));
});
