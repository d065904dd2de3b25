import { resolveRegions } from '@pourproof/arrangement';
import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import type { ColourCut } from './colour-cuts.ts';
import type { DrawnColour } from './drawn-colours.ts';
import { colourBehind, colourBehindPath } from './streaks.ts';

const colour = (name: string): DrawnColour => ({ name, lab: null }) as DrawnColour;
const square = (x: number): ColourCut['cut'] =>
  resolveRegions([{ ...packRings([[x, 0, x + 10, 0, x + 10, 10, x, 10]]), fillRule: 'nonzero' }]).region;
const cutOf = (name: string, x: number): ColourCut =>
  ({ colour: colour(name), cut: square(x) }) as unknown as ColourCut;
const CUTS = [cutOf('red', 0), cutOf('blue', 20)];

test('behind a wall stands the colour of its own pocket, and none where nothing is cut', () => {
  // right wall of each square: the wood lies to the right
  expect(colourBehind(CUTS, [10, 5], [1, 0])?.name).toBe('red');
  expect(colourBehind(CUTS, [30, 5], [3, 0])?.name).toBe('blue');
  expect(colourBehind(CUTS, [20, 5], [-1, 0])?.name).toBe('blue');
  expect(colourBehind(CUTS, [15, 5], [1, 0])).toBeNull();
  expect(colourBehind(CUTS.slice(0, 1), [15, 5], [1, 0])?.name).toBe('red');
});

test('a path is judged by its longest edge, with the pocket on the inner side of a clean ring', () => {
  // down the right wall of the blue square, then a little along its bottom
  expect(colourBehindPath(CUTS, new Float64Array([30, 1, 30, 9, 29.5, 10]))?.name).toBe('blue');
  expect(colourBehindPath(CUTS, new Float64Array([30, 1]))).toBeNull();
});
