import { describe, expect, test } from 'vitest';
import { mergeOverlaps } from './merge-overlaps.ts';

/** The lines that are left, each from its left or upper end, in order. */
const merged = (...lines: readonly (readonly [number, number, number, number])[]) => {
  const result = mergeOverlaps(lines);
  const kept = result.lines.map(([ax = 0, ay = 0, bx = 0, by = 0]) =>
    ax < bx || (ax === bx && ay < by) ? [ax, ay, bx, by] : [bx, by, ax, ay],
  );
  const rounded = kept.map((line) => line.map((v) => Number(v.toFixed(6)) + 0));
  return {
    lines: rounded.toSorted((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0)),
    doubled: result.doubled,
  };
};

describe('lines on one infinite line', () => {
  test.each([
    ['along', [5, 0, 15, 0]],
    ['against', [15, 0, 5, 0]],
  ] as const)('that overlap, drawn %s each other, are split at their ends and kept once', (_how, other) => {
    const { lines, doubled } = merged([0, 0, 10, 0], other);
    expect(lines).toEqual([
      [0, 0, 5, 0],
      [5, 0, 10, 0],
      [10, 0, 15, 0],
    ]);
    expect(doubled).toHaveLength(1);
    expect(doubled[0]?.atMm[0]).toBeGreaterThanOrEqual(5);
    expect(doubled[0]?.atMm[0]).toBeLessThanOrEqual(10);
  });

  test('that lie within each other, slanting and drawn against each other, are split as well', () => {
    const { lines, doubled } = merged([10, 20, 0, 0], [2, 4, 6, 12]);
    expect(lines).toEqual([
      [0, 0, 2, 4],
      [2, 4, 6, 12],
      [6, 12, 10, 20],
    ]);
    expect(doubled).toHaveLength(1);
  });

  test('that touch end to end, lie apart or run beside each other stay as they are', () => {
    for (const other of [
      [10, 0, 20, 0],
      [12, 0, 20, 0],
      [0, 0.01, 10, 0.01],
      [0, 0, 10, 0.01],
    ] as const) {
      const { lines, doubled } = merged([0, 0, 10, 0], other);
      expect(lines).toHaveLength(2);
      expect(doubled).toEqual([]);
    }
  });
});
