import { expect, test } from 'vitest';
import { cleanFrom, rectangle, regular } from '../../../../tests/support/shapes/clean-from.ts';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { type StrokeLine, strokeLines } from './stroke-lines.ts';
import { strokeWidths } from './stroke-widths.ts';

const lengthOf = ({ path }: StrokeLine): number => {
  let sum = 0;
  for (let i = 0; i + 3 < path.length; i += 2) {
    sum += Math.hypot(path[i + 2]! - path[i]!, path[i + 3]! - path[i + 1]!);
  }
  return sum;
};

const endsOf = ({ path, widths }: StrokeLine): [number, number, number][] => [
  [path[0]!, path[1]!, widths[0]!],
  [path.at(-2)!, path.at(-1)!, widths.at(-1)!],
];

test('a bar whose end is pointed is a stroke and a taper that meet, as long and as wide as they are', () => {
  const axis = medialAxis(cleanFrom([[0, 0, 40, 0, 70, 1, 40, 2, 0, 2]]));
  const lines = strokeLines(axis);
  expect(lines.map(({ kind }) => kind).sort()).toEqual(['stroke', 'taper']);
  const [stroke, taper] = lines.toSorted((a, b) => (a.kind < b.kind ? -1 : 1)) as [StrokeLine, StrokeLine];
  const total = lengthOf(stroke) + lengthOf(taper);
  // the axis from where the corners of the square end meet, 1 mm from it, up to the tip
  expect(total).toBeCloseTo(69, 9);
  expect(strokeWidths(axis).lengthMm).toBeCloseTo(total, 9);
  expect(Math.max(...stroke.widths)).toBeCloseTo(2, 9);
  expect(Math.min(...taper.widths)).toBe(0);
  const shared = endsOf(stroke).filter(([x, y, width]) =>
    endsOf(taper).some(([tx, ty, tw]) => Math.hypot(x - tx, y - ty, width - tw) < 1e-9),
  );
  expect(shared.length).toBe(1);
});

test('three bars that meet are three lines, and each runs on from point to point without a jump', () => {
  const axis = medialAxis(cleanFrom([[0, 0, 40, 0, 40, 2, 21, 2.5, 21, 30, 19, 30, 19, 2.5, 0, 2]]));
  const lines = strokeLines(axis);
  expect(lines.map(({ kind }) => kind)).toEqual(['stroke', 'stroke', 'stroke']);
  for (const line of lines) {
    expect(lengthOf(line)).toBeGreaterThan(15);
    expect(lengthOf(line)).toBeLessThan(30);
  }
});

test('a thin ring is one closed line, and its part is that of what it is in', () => {
  const ring = strokeLines(medialAxis(cleanFrom([regular(60, 10)], [regular(60, 9)])));
  expect(ring.length).toBe(1);
  const [[ax, ay], [bx, by]] = endsOf(ring[0]!);
  expect(Math.hypot(ax! - bx!, ay! - by!)).toBeLessThan(1e-9);
  expect(lengthOf(ring[0]!) / (2 * Math.PI * 9.5)).toBeCloseTo(1, 2);
  const two = strokeLines(medialAxis(cleanFrom([rectangle(0, 0, 9, 1), rectangle(0, 5, 9, 1)])));
  expect(two.map(({ part }) => part).sort()).toEqual([0, 1]);
  // straight all along: its two ends
  expect(two.map(({ widths }) => [...widths])).toEqual([
    [1, 1],
    [1, 1],
  ]);
});
