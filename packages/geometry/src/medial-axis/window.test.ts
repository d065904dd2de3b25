import { expect, test } from 'vitest';
import { Window } from './window.ts';

const SLACK = 1e-9;

test('a fresh window is the cone out to its reach', () => {
  const window = new Window();
  window.open(0, 1, 1, 0, 10);
  expect(window.holds(3, 4, SLACK)).toBe(true);
  expect(window.holds(0, 10, SLACK)).toBe(true);
  expect(window.holds(10, 0, SLACK)).toBe(true);
  expect(window.holds(-1, 2, SLACK)).toBe(false);
  expect(window.holds(2, -1, SLACK)).toBe(false);
});

test('a cut takes away what lies beyond its line and says so only when it did', () => {
  const window = new Window();
  window.open(0, 1, 1, 0, 10);
  expect(window.cut(1, 1, 4)).toBe(true);
  expect(window.cut(1, 1, 5)).toBe(false);
  expect(window.holds(1.9, 1.9, SLACK)).toBe(true);
  expect(window.holds(2.1, 2.1, SLACK)).toBe(false);
  // corners are 0, (4, 0), (0, 4)
  expect(window.reach).toBeCloseTo(4, 12);
});

test('a window without width keeps its direction, whatever it is cut by', () => {
  const window = new Window();
  window.open(0.6, 0.8, 0.6, 0.8, 1000);
  expect(window.cut(-1, 0.1, 1)).toBe(false);
  expect(window.cut(1, 1, 2.8)).toBe(true);
  expect(window.holds(1.194, 1.592, 1e-6)).toBe(true);
  expect(window.holds(1.206, 1.608, 1e-6)).toBe(false);
});

test('boxes are kept apart by the sides of either', () => {
  const window = new Window();
  window.open(0, 1, 1, 0, 1);
  window.cut(1, 1, 1);
  const half = Math.SQRT1_2;
  // the triangle 0, (1, 0), (0, 1) against boxes turned by half a right angle
  expect(window.meetsBox(1, 1, half, half, 0.7, 0.7)).toBe(false);
  expect(window.meetsBox(1, 1, half, half, 0.72, 0.7)).toBe(true);
  expect(window.meetsBox(-1, 0.5, 1, 0, 0.9, 5)).toBe(false);
  expect(window.meetsBox(-1, 0.5, 1, 0, 1.1, 5)).toBe(true);
});

test('a window with very many sides holds what no cut took away, and little more', () => {
  const window = new Window();
  window.open(0, 1, 1, 0, 100);
  // tangents of the disc of radius 10 around (10, 10), by rising distance so that each takes a corner off
  const turns = [2, 1, 3, 0, 4].flatMap((k) => [0, 3, 1, 4, 2, 5].map((j) => -0.75 + (k + j / 6) * 0.78));
  for (const turn of turns) {
    const [nx, ny] = [Math.cos(turn), Math.sin(turn)];
    window.cut(nx, ny, 10 * nx + 10 * ny + 10);
  }
  for (let turn = -1.5; turn < 3; turn += 0.01) {
    const [nx, ny] = [Math.cos(turn), Math.sin(turn)];
    window.measure(nx, ny);
    const reach = 10 * nx + 10 * ny + 10;
    expect(window.maxU).toBeGreaterThan(reach - 1e-9);
    expect(window.holds(10 + 9.99 * nx, 10 + 9.99 * ny, SLACK)).toBe(true);
    // to the sides cuts are left out when it has as many sides as it may have
    if (turn > 0 && turn < Math.PI / 2) {
      expect(window.maxU).toBeLessThan(reach + 0.6);
      expect(window.holds(10 + 10.6 * nx, 10 + 10.6 * ny, SLACK)).toBe(false);
    }
  }
});
