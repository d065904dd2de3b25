import { expect, test } from 'vitest';
import { type Disc, trimCurve } from './trim-curve.ts';

const unit = (x: number, y: number): Disc => ({ x, y, radius: 1 });

test('a straight curve from within one disc into another is cut on both rims', () => {
  const { points, from, to, shift } = trimCurve([0, 0.6, 0, 8, 0.6, 0], unit(0, 0), unit(8, 0));
  // 0.6 above the middle the rim is 0.8 away from it
  expect(points.map((value) => Math.round(value * 1e9) / 1e9)).toEqual([0.8, 0.6, 0, 7.2, 0.6, 0]);
  // its only move is cut
  expect([from, to, shift]).toEqual([1, 0, 0]);
});

test('whole moves within a disc go, and the move that leaves it is cut, however many come after', () => {
  for (let more = 0; more < 4; more++) {
    const rest = Array.from({ length: more }, (_, k) => [5 + k, k % 2, 0]).flat();
    const last = [9, 0, 0];
    const curve = [0.1, 0, 0, 0.2, 0, 0, 4, 0, 0, ...rest, ...last];
    const start = trimCurve(curve, unit(0, 0), unit(90, 0));
    expect(start.points.slice(0, 6)).toEqual([1, 0, 0, 4, 0, 0]);
    expect(start.from).toBe(2);
    const back = [...last, ...rest, 4, 0, 0, 0.2, 0, 0, 0.1, 0, 0];
    const end = trimCurve(back, unit(90, 0), unit(0, 0));
    expect(end.points.slice(-6)).toEqual([4, 0, 0, 1, 0, 0]);
    expect(end.to).toBe(more + 1);
  }
});

test('a curve that does not reach a disc is led straight to its rim, and a radius of 0 is no disc', () => {
  const led = trimCurve([3, 0, 0, 5, 0, 0], unit(0, 0), unit(5, 4));
  expect(led.points).toEqual([1, 0, 0, 3, 0, 0, 5, 0, 0, 5, 3, 0]);
  expect(led.shift).toBe(-1);
  const none = { x: 0, y: 0, radius: 0 };
  expect(trimCurve([3, 0, 0, 5, 0, 0], none, none).points).toEqual([3, 0, 0, 5, 0, 0]);
});
