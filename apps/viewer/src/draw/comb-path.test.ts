import { expect, test } from 'vitest';
import { combPath } from './comb-path.ts';

/** The teeth of a comb: where each starts and how it runs. */
function teeth(data: string): number[][] {
  return [...data.matchAll(/M(\S+) (\S+)l(\S+) ([^M]+)/gu)].map((match) => match.slice(1).map(Number));
}

test('teeth leave a wall square to the fibres outwards, as long as the travel', () => {
  // the left wall of a pocket whose ring turns from +x to +y runs upwards
  const all = teeth(combPath(Float64Array.of(0, 4, 0, 0), [1, 0], 2));
  expect(all).toHaveLength(5);
  for (const [x, , dx, dy] of all) {
    expect([x, dx, dy]).toEqual([0, -2, 0]);
  }
});

test('a wall along the fibres has teeth of no length', () => {
  for (const [, , dx, dy] of teeth(combPath(Float64Array.of(0, 0, 4, 0), [1, 0], 2))) {
    expect(Math.hypot(dx!, dy!)).toBe(0);
  }
});

test('at 30° to the fibres a tooth is half as long as at 90°', () => {
  const wall = Float64Array.of(0, 0, 10 * Math.cos(Math.PI / 6), 10 * Math.sin(Math.PI / 6));
  const all = teeth(combPath(wall, [1, 0], 2));
  expect(all.length).toBeGreaterThan(5);
  for (const [, , dx, dy] of all) {
    expect(Math.hypot(dx!, dy!)).toBeCloseTo(1, 3);
  }
});

test('the distance of teeth goes on over corners and points that lie together', () => {
  const whole = teeth(combPath(Float64Array.of(0, 0, 0, 8), [1, 0], 1));
  const parts = teeth(combPath(Float64Array.of(0, 0, 0, 0.3, 0, 0.3, 0, 5, 0, 8), [1, 0], 1));
  expect(parts).toEqual(whole);
});
