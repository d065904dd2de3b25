import { expect, test } from 'vitest';
import { ArcRingPen } from './arc-ring-pen.ts';

test('points no farther apart than the closeness are one along straight edges, at any place of any ring', () => {
  const pen = new ArcRingPen(12, 0.5);
  for (const shift of [0, 100]) {
    for (const [x, y] of [
      [0, 0],
      [0.5, -0.5],
      [4, 0],
      [4, 0.5],
      [4, 3],
      [3.5, 3],
      [0, 0.5],
    ] as const) {
      pen.draw(x + shift, y);
    }
    expect(pen.lift()).toBe(true);
  }
  const { coords, ringEnds } = pen.rings();
  expect([...ringEnds]).toEqual([3, 6]);
  expect([...coords]).toEqual([0, 0, 4, 0, 4, 3, 100, 0, 104, 0, 104, 3]);
});

test('farther in either direction they are two, as the ends of an arc are always', () => {
  const pen = new ArcRingPen(6, 0.5);
  pen.draw(0, 0);
  pen.draw(0.6, 0);
  pen.draw(0.6, 0.6);
  pen.bend(1);
  pen.draw(0.6, 0.5);
  expect(pen.lift()).toBe(true);
  pen.draw(9, 9);
  expect(pen.lift()).toBe(false);
  expect([...pen.rings().coords]).toEqual([0, 0, 0.6, 0, 0.6, 0.6, 0.6, 0.5]);
  expect([...pen.rings().bulges]).toEqual([0, 0, 1, 0]);
});
