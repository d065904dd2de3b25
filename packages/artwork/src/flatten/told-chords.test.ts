import { expect, test } from 'vitest';
import { markUntold } from './told-chords.ts';

const TOLERANCE_MM = 0.005;

/** A polyline from the origin by lengths and directions, degrees. */
function line(...parts: readonly (readonly [number, number])[]): number[] {
  const points = [0, 0];
  for (const [mm, deg] of parts) {
    const rad = (deg * Math.PI) / 180;
    points.push(points.at(-2)! + mm * Math.cos(rad), points.at(-1)! + mm * Math.sin(rad));
  }
  return points;
}

function marked(points: readonly number[], heightMm: number, movedMm = 0): readonly number[] {
  const n = points.length / 2 - 1;
  const marks: number[] = [7, 7];
  const moves = new Array<number>(n + 1).fill(movedMm);
  const count = markUntold(points, new Array<number>(n).fill(heightMm), moves, TOLERANCE_MM, marks);
  expect(count).toBe(marks.reduce((sum, mark) => sum + mark, 0));
  return marks;
}

test('chords of an arc within the tolerance tell each other', () => {
  // 2.5 mm of radius: 0.3 mm chords are 0.0045 mm high
  expect(marked(line([0.3, 0], [0.3, 6.9], [0.3, 13.8]), 0.0045)).toEqual([0, 0, 0]);
});

test('a chord that is long for its turn is to be halved, unless the curve is on it and its ends were not moved', () => {
  const hook = line([10, 0], [0.05, 20], [0.05, 40]);
  expect(marked(hook, 0.004)).toEqual([1, 0, 0]);
  expect(marked(hook, 1e-9)).toEqual([0, 0, 0]);
  expect(marked(hook, 0, 0.001)).toEqual([1, 0, 0]);
});

test('one chord alone, chords that go straight on, and corners tell nothing', () => {
  expect(marked(line([1, 0]), 0.004)).toEqual([1]);
  expect(marked(line([1, 0], [1, 1e-8]), 0.004)).toEqual([1, 1]);
  expect(marked(line([0.03, 0], [0.03, 70]), 0.004)).toEqual([1, 1]);
  expect(marked(line([0.03, 0], [0.03, 180]), 0.004)).toEqual([1, 1]);
});

test('the tip of a hairpin is told by a chord beside it while it is shorter than twice the tolerance', () => {
  const hairpin = (tipMm: number): number[] =>
    line([0.2, -10], [0.2, 0], [tipMm, 90], [0.2, 180], [0.2, 190]);
  expect(marked(hairpin(0.008), 0.004)).toEqual([0, 0, 0, 0, 0]);
  expect(marked(hairpin(0.011), 0.004)).toEqual([0, 0, 1, 0, 0]);
});
