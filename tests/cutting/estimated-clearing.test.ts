import { resolveRegions } from '@pourproof/arrangement';
import { cutterEfforts } from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';

const axisOf = (...rings: readonly number[][]) =>
  medialAxis(resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region);
const plate = axisOf([0, 0, 300, 0, 300, 200, 0, 200]);
/** A comb of forty teeth, 3 mm apart. */
const comb = axisOf([
  0,
  0,
  ...Array.from({ length: 40 }, (_, k) => [6 * k + 3, 0, 6 * k + 3, 60, 6 * k + 6, 60, 6 * k + 6, 0]).flat(),
  243,
  0,
  243,
  -30,
  0,
  -30,
]);
const TASKS = [
  { way: 'clear', widthMm: 2, depthMm: 3, deepestPassMm: 1 },
  { way: 'clear', widthMm: 1, depthMm: 3, deepestPassMm: 1 },
] as const;

test.each([
  ['a plate', plate],
  ['a comb', comb],
])('%s: what is estimated from area and outline is near what is planned', (_, axis) => {
  const [planned, after] = cutterEfforts({ clear: axis, follow: axis }, TASKS);
  const [estimated, estimatedAfter] = cutterEfforts({ clear: axis, follow: axis }, TASKS, {}, 0);
  expect([planned?.isEstimated, estimated?.isEstimated]).toEqual([false, true]);
  expect(estimated?.passes).toBe(planned?.passes);
  expect(estimated!.pathMm / planned!.pathMm).toBeGreaterThan(0.85);
  expect(estimated!.pathMm / planned!.pathMm).toBeLessThan(1.2);
  // a later bit goes along the outline at most
  expect(estimatedAfter!.minutes).toBeGreaterThanOrEqual(after!.minutes);
});

test('a clearing of any size takes no more than it takes to look at it', () => {
  const side = 200_000;
  const teeth = Array.from({ length: 2000 }, (_, k) => [side - 20 * k - 10, 5, side - 20 * k - 20, 0]).flat();
  const huge = axisOf([0, 0, 0, side, side, side, side, 0, ...teeth]);
  const [effort] = cutterEfforts({ clear: huge, follow: huge }, TASKS);
  expect(effort?.isEstimated).toBe(true);
  // area over the stepover of 0.8 mm in three passes, within a hundredth
  expect(effort!.pathMm / ((3 * side * side) / 0.8)).toBeCloseTo(1, 2);
});
