import { describe, expect, test } from 'vitest';
import { type ChainPiece, joinChains } from './join-chains.ts';
import { type FoundOutline, openOutlines } from './open-outlines.ts';

const JOIN_MM = 0.05;
const piece = (...coords: number[]): ChainPiece => ({ coords });
const foundIn = (pieces: readonly ChainPiece[], toleranceMm = JOIN_MM): readonly FoundOutline[] =>
  openOutlines(pieces, joinChains(pieces, toleranceMm), toleranceMm);

/** Two right angles that make a square of 10 mm but for gaps of 1 mm at two corners. */
const halves = (x: number, y: number): readonly ChainPiece[] => [
  piece(x + 1, y, x + 10, y, x + 10, y + 9),
  piece(x + 10, y + 10, x, y + 10, x, y),
];

describe('outlines that lines leave open', () => {
  test('are those of lines whose ends belong together, with their gaps and what they enclose', () => {
    const [square, ...more] = foundIn(halves(0, 0));
    expect(more).toEqual([]);
    expect(square?.gaps.map(({ widthMm }) => widthMm)).toEqual([1, 1]);
    expect(square?.areaMm2).toBeCloseTo(100, 9);
  });

  test('or of one line whose ends do, with the gap between them', () => {
    const [square, ...more] = foundIn([piece(3, 0, 0, 0, 0, 10, 10, 10, 10, 0, 5, 0)]);
    expect(more).toEqual([]);
    expect(square?.gaps.map(({ widthMm }) => widthMm)).toEqual([2]);
    expect(square?.areaMm2).toBeCloseTo(100, 9);
  });

  test('but not of lines side by side, whose ends have others as near', () => {
    const hatch = Array.from({ length: 6 }, (_, k) => piece(0, 2 * k, 40, 2 * k));
    expect(foundIn(hatch)).toEqual([]);
    // a third end beside a gap of 1 mm
    expect(foundIn([...halves(0, 0), piece(10.5, 10.5, 30, 30)])).toEqual([]);
    expect(foundIn([...halves(0, 0), piece(12, 12, 30, 30)])).toHaveLength(1);
  });

  test('nor what encloses next to nothing or is open by more than half of its length', () => {
    expect(foundIn([piece(0, 0, 10, 0), piece(10, 0.0001, 0, 0.0001)])).toEqual([]);
    expect(foundIn([piece(0, 0, 7, 0), piece(7, 4, 0, 4)])).toEqual([]);
  });

  test('are not sought among more than two thousand lines', () => {
    const squares = (count: number): readonly ChainPiece[] =>
      Array.from({ length: count }, (_, k) => halves(40 * (k % 40), 40 * Math.floor(k / 40))).flat();
    expect(foundIn(squares(50))).toHaveLength(50);
    expect(foundIn(squares(1001))).toEqual([]);
  });

  test('nor across more than the reach, where ends have been joined that far', () => {
    expect(foundIn([piece(0, 0, 40, 0, 40, 40, 0, 40, 0, 11)], 10)).toHaveLength(1);
    expect(foundIn([piece(0, 0, 40, 0, 40, 40, 0, 40, 0, 9)], 10)).toEqual([]);
  });
});
