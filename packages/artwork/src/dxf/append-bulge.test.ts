import { ringArea } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { appendBulge } from './append-bulge.ts';

const PLAIN = { ox: 0, oy: 0, xx: 1, xy: 0, yx: 0, yy: 1 };
const MIRRORED = { ox: 3, oy: -2, xx: -2, xy: 0.5, yx: 0.3, yy: 1.5 };

test('arcs of any flatness have the area of their segment, through any map', () => {
  for (const map of [PLAIN, MIRRORED]) {
    const determinant = map.xx * map.yy - map.xy * map.yx;
    // from far flatter than the tolerance to almost a full turn
    for (let bulge = 1e-4; bulge < 50; bulge *= 1.07) {
      const out = [map.ox, map.oy];
      appendBulge(out, map, 0, 0, 20, 0, bulge, 0.005);
      const angle = 4 * Math.atan(bulge);
      const radius = (20 * (1 + bulge * bulge)) / (4 * bulge);
      const segment = (radius * radius * (angle - Math.sin(angle))) / 2;
      // the formula itself keeps about nine digits of θ − sin θ at the flattest
      expect(Math.abs(ringArea(out) / (determinant * segment) - 1)).toBeLessThan(1e-7);
    }
  }
});

test('a positive bulge turns counter-clockwise: its arc lies to the right of the way', () => {
  const out = [0, 0];
  appendBulge(out, PLAIN, 0, 0, 10, 0, 1, 0.01);
  const lowest = Math.min(...out.filter((_, i) => i % 2 === 1));
  expect(lowest).toBeCloseTo(-5, 2);
  expect(out.slice(-2)).toEqual([10, 0]);
});

test('no bulge, the flattest bulges and no length give the end point alone', () => {
  for (const [x1, bulge] of [
    [10, 0],
    [10, 1e-9],
    [0, 0.5],
  ] as const) {
    const out = [0, 0];
    appendBulge(out, PLAIN, 0, 0, x1, 0, bulge, 0.01);
    expect(out).toEqual([0, 0, x1, 0]);
  }
});
