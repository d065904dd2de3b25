import { resolveRegions } from '@pourproof/arrangement';
import { parseBit } from '@pourproof/job';
import { type CleanRegion, packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { cutShape } from './cut-shape.ts';
import { depthAlong } from './depth-along.ts';

const region = (...rings: number[][]): CleanRegion =>
  resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
/** A bar 40 by 4 mm with one of 40 by 2 mm below it. */
const BARS = region([0, 0, 40, 0, 40, 4, 0, 4], [0, 10, 40, 10, 40, 12, 0, 12]);

test('beside a V groove it is that of the stroke there, beside its end too', () => {
  const along = depthAlong(BARS, cutShape([parseBit('vee:60deg:1/2in')], 3), 3);
  // half of the width over tan 30°, at most the depth of the job
  expect(along([40, 12], [0, 12])).toBeCloseTo(Math.sqrt(3), 6);
  expect(along([40, 10], [40, 12])).toBeCloseTo(Math.sqrt(3), 6);
  expect(along([0, 0], [40, 0])).toBe(3);
});

test('beside bits that clear it is the whole depth', () => {
  expect(depthAlong(BARS, cutShape([parseBit('flat:1mm')], 3), 3)([0, 12], [40, 12])).toBe(3);
});

test('a hole in the pocket bounds the stroke beside it', () => {
  const ring = region([0, 0, 40, 0, 40, 40, 0, 40], [2, 2, 2, 38, 38, 38, 38, 2]);
  const along = depthAlong(ring, cutShape([parseBit('vee:60deg:1/2in')], 5), 5);
  expect(along([0, 0], [40, 0])).toBeCloseTo(Math.sqrt(3), 6);
});
