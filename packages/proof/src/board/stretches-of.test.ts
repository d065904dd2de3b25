import { describe, expect, test } from 'vitest';
import { stretchesOf } from './stretches-of.ts';

/** Steps to the right of these lengths, wanted where they are longer than 1. */
const stretches = (lengths: readonly number[], joinGapMm: number): number[][] => {
  const coords = [0, 0];
  for (const length of lengths) {
    coords.push((coords.at(-2) ?? 0) + length, 0);
  }
  const isWanted = ([ax, , bx]: readonly number[]): boolean => (bx ?? 0) - (ax ?? 0) > 1;
  return stretchesOf(Float64Array.from(coords), isWanted, joinGapMm).map((path) =>
    [...path].filter((_, k) => k % 2 === 0),
  );
};

describe('stretches of a line', () => {
  test('leave out what is not wanted at both ends and in between', () => {
    expect(stretches([1, 2, 3, 1, 1, 4, 1], 1.5)).toEqual([
      [1, 3, 6],
      [8, 12],
    ]);
  });

  test('go on over gaps up to the limit, however many edges they have', () => {
    expect(stretches([2, 1, 1, 2], 2)).toEqual([[0, 2, 3, 4, 6]]);
    expect(stretches([2, 1, 1, 2], 1.9)).toEqual([
      [0, 2],
      [4, 6],
    ]);
  });

  test('are none where nothing is wanted, and the line where all is', () => {
    expect(stretches([1, 1], 5)).toEqual([]);
    expect(stretches([2, 3], 0)).toEqual([[0, 2, 5]]);
    expect(stretchesOf(new Float64Array(), () => true, 1)).toEqual([]);
  });
});
