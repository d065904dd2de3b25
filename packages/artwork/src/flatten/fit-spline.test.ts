import { ringArea } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { flattenFitSpline } from './fit-spline.ts';

function circlePoints(n: number, r: number, part: number): number[] {
  return Array.from({ length: n }, (_, k) => [
    r * Math.cos((part * k) / n),
    r * Math.sin((part * k) / n),
  ]).flat();
}

test('passes through every point, also where points are repeated', () => {
  const points = [0, 0, 10, 5, 10, 5, 12, -3, 20, 0];
  const out: number[] = [];
  flattenFitSpline(out, points, false, [undefined, undefined], 0.01);
  for (let i = 0; i < points.length; i += 2) {
    const hit = out.some((x, k) => k % 2 === 0 && x === points[i] && out[k + 1] === points[i + 1]);
    expect(hit).toBe(true);
  }
});

test('a closed one comes to a circle with the fourth power of the step, as cubic splines do', () => {
  const error = (n: number): number => {
    const out: number[] = [];
    flattenFitSpline(out, circlePoints(n, 10, 2 * Math.PI), true, [undefined, undefined], 1e-4);
    return Math.abs(ringArea(out) / (100 * Math.PI) - 1);
  };
  // halving the step divides the error by 16; a kink anywhere would leave a lower power
  expect(error(12) / error(24)).toBeGreaterThan(14);
  expect(error(24) / error(48)).toBeGreaterThan(14);
  expect(error(48)).toBeLessThan(1e-5);
});

test('an open one follows its tangents: half a circle is met better with them than without', () => {
  const points = [...circlePoints(12, 10, Math.PI), -10, 0];
  const error = (tangents: [[number, number] | undefined, [number, number] | undefined]): number => {
    const out: number[] = [];
    flattenFitSpline(out, points, false, tangents, 1e-4);
    return Math.abs(ringArea(out) / (50 * Math.PI) - 1);
  };
  const free = error([undefined, undefined]);
  const held = error([
    [0, 3],
    [0, -7],
  ]);
  expect(held).toBeLessThan(1e-4);
  expect(held).toBeLessThan(free / 5);
});

test('points on a line stay on it', () => {
  const out: number[] = [];
  flattenFitSpline(out, [0, 0, 1, 2, 5, 10, 6, 12], false, [undefined, undefined], 0.001);
  for (let i = 0; i < out.length; i += 2) {
    expect(out[i + 1]).toBeCloseTo(2 * out[i], 9);
  }
});

test('no points give nothing, one point gives itself', () => {
  for (const points of [[], [3, 4]]) {
    const out: number[] = [];
    flattenFitSpline(out, points, true, [undefined, undefined], 0.1);
    expect(out).toEqual(points);
  }
});
