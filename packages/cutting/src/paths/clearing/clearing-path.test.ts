import { medialAxis } from '@pourproof/geometry';
import { expect, test } from 'vitest';
import { cleanFrom, rectangle } from '../../../../../tests/support/shapes/clean-from.ts';
import { type Clearing, clearingPath } from './clearing-path.ts';

const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
const good: Clearing = { diameterMm: 2, stepoverMm: 1, depthMm: 1 };

test('a size out of its range is refused by its name', () => {
  for (const bad of [
    { diameterMm: -1 },
    { stepoverMm: 2.01 },
    { depthMm: -0.1 },
    { openDepthMm: -0.1 },
    { openDepthMm: 1.1 },
    { earlierDiameterMm: -1 },
    { overlapMm: -1 },
    { ignoreMm: -1 },
    { stayDownMm: -1 },
  ]) {
    const [name] = Object.keys(bad);
    expect(() => clearingPath(axis, { ...good, ...bad })).toThrow(RangeError);
    expect(() => clearingPath(axis, { ...good, ...bad })).toThrow(`${name} is `);
  }
});

test('none is a size where there may be none', () => {
  const none = { openDepthMm: 0, earlierDiameterMm: 0, overlapMm: 0, ignoreMm: 0, stayDownMm: 0 };
  expect(clearingPath(axis, { ...good, ...none }).runEnds.length).toBe(1);
  expect(clearingPath(axis, { ...good, openDepthMm: 1 }).runEnds.length).toBe(1);
});
