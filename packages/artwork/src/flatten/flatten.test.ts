import { ringArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { CubicFlattener } from './cubic-flattener.ts';
import { flattenEllipseArc } from './flatten-ellipse-arc.ts';

// one for all tests: nothing of a curve may be left over for the next
const curves = new CubicFlattener();

// the closed form of ½∮(x dy − y dx) over a cubic and its chord, written here from the four points
function cubicArea(p: readonly number[]): number {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = p as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const open =
    (x0 * (6 * y1 + 3 * y2 + y3) +
      3 * (x1 * (-2 * y0 + y2 + y3) - x2 * (y0 + y1 - 2 * y3)) -
      x3 * (y0 + 3 * y1 + 6 * y2)) /
    20;
  return open + (x3 * y0 - y3 * x0) / 2;
}

const cubicAt = (p: readonly number[], t: number): [number, number] => {
  const u = 1 - t;
  const b = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t] as const;
  const at = (k: 0 | 1) => b[0] * p[k]! + b[1] * p[2 + k]! + b[2] * p[4 + k]! + b[3] * p[6 + k]!;
  return [at(0), at(1)];
};

function distanceToPolyline(x: number, y: number, line: readonly number[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [ax, ay, bx, by] = [line[i]!, line[i + 1]!, line[i + 2]!, line[i + 3]!];
    const l2 = (bx - ax) ** 2 + (by - ay) ** 2;
    const t = l2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / l2));
    best = Math.min(best, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y));
  }
  return best;
}

const coordinate = fc.double({ min: -40, max: 40, noNaN: true, noDefaultInfinity: true });
const cubic = fc.array(coordinate, { minLength: 8, maxLength: 8 });
const tolerance = fc.constantFrom(0.05, 0.01, 0.005, 0.001);

describe('flattening a cubic', () => {
  test('keeps the area of the curve to rounding at every tolerance', () => {
    fc.assert(
      fc.property(cubic, tolerance, (p, tol) => {
        const out = [p[0]!, p[1]!];
        curves.cubic(out, ...(p as [number, number, number, number, number, number, number, number]), tol);
        expect(Math.abs(ringArea(out) - cubicArea(p))).toBeLessThan(1e-9 * 40 * 40);
      }),
      // a hairpin of 40 mm whose ends are 5e-7 mm apart: two pieces had no point to move aside
      { examples: [[[0, 0, 39.99999891703871, 0, 39.99999783414927, 0, 0, 5.337781845206238e-7], 0.01]] },
    );
  });

  test('stays within the tolerance of the curve, both ways, and ends at its end', () => {
    fc.assert(
      fc.property(cubic, tolerance, (p, tol) => {
        const out = [p[0]!, p[1]!];
        curves.cubic(out, ...(p as [number, number, number, number, number, number, number, number]), tol);
        expect(out.slice(-2)).toEqual(p.slice(-2));
        for (let t = 0; t <= 1; t += 1 / 64) {
          const [x, y] = cubicAt(p, t);
          expect(distanceToPolyline(x, y, out)).toBeLessThanOrEqual(tol * (1 + 1e-9));
        }
      }),
      cases(60),
    );
  });

  test('gives one segment for a straight curve', () => {
    const out = [0, 0];
    curves.cubic(out, 0, 0, 1, 2, 2, 4, 3, 6, 0.005);
    expect(out).toEqual([0, 0, 3, 6]);
  });
});

test('a quadratic keeps its area: two thirds of the control triangle', () => {
  const out = [0, 0];
  curves.quadratic(out, 0, 0, 5, 8, 10, 0, 0.005);
  expect(Math.abs(ringArea(out))).toBeCloseTo((2 / 3) * 40, 10);
});

test('a full ellipse keeps πab, turned and mirrored', () => {
  for (const [ux, uy, vx, vy] of [
    [5, 0, 0, 5],
    [3, 4, -8, 6],
    [3, 4, 8, -6],
  ] as const) {
    const out: number[] = [];
    flattenEllipseArc(out, { cx: 7, cy: -3, ux, uy, vx, vy, start: 0, end: 2 * Math.PI }, 0.005);
    const exact = Math.PI * (ux * vy - uy * vx);
    expect(Math.abs(ringArea(out) - exact)).toBeLessThan(1e-9);
  }
});

test('a flat quadratic keeps its area at every height, also where one inner vertex would be too few', () => {
  for (let height = 0.001; height < 0.4; height += 0.001) {
    const out = [0, 0];
    curves.quadratic(out, 0, 0, 2, height, 4, 0, 0.01);
    // two thirds of the control triangle 4 × height / 2
    expect(Math.abs(ringArea(out))).toBeCloseTo((4 / 3) * height, 12);
  }
});

test('a curve with one tight bend is not divided finely all along', () => {
  // equal steps in t would need √(6·bend/4·tolerance) of them everywhere
  const p = [0, 0, 40, 1, 0.5, -1, 0.2, 6] as const;
  const bend = Math.hypot(40 - 2 * 0.5 + 0.2, 1 + 2 + 6);
  const even = Math.ceil(Math.sqrt((6 * Math.max(bend, Math.hypot(-2 * 40 + 0.5, -3))) / (4 * 0.005)));
  const out: number[] = [0, 0];
  curves.cubic(out, ...p, 0.005);
  expect(out.length / 2).toBeLessThan(0.6 * even);
});

test.each([
  ['an S into a corner', [0, 0, 0, 40, 0.1, 40, 40, 40]],
  ['a bend near one end', [0, 0, 1, 0, 2, 0.1, 40, 40]],
  ['a bend near the other', [0, 0, 39, 0, 40, 1, 40, 40]],
] as const)(
  'pieces of %s are as long as its curvature allows, to a third',
  (_what, [x0, y0, x1, y1, x2, y2, x3, y3]) => {
    const tol = 0.0005;
    // chords of a height need ∫ √(|p′ × p″| / 8 |p′|) dt / √height of them (Taylor's theorem); half the tolerance is left for the vertices that move
    const derivatives = (t: number, a: number, b: number, c: number, d: number): [number, number] => [
      3 * ((1 - t) ** 2 * (b - a) + 2 * (1 - t) * t * (c - b) + t * t * (d - c)),
      6 * ((1 - t) * (c - 2 * b + a) + t * (d - 2 * c + b)),
    ];
    const steps = 2000;
    let integral = 0;
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps;
      const [dx, ddx] = derivatives(t, x0, x1, x2, x3);
      const [dy, ddy] = derivatives(t, y0, y1, y2, y3);
      integral += Math.sqrt(Math.abs(dx * ddy - dy * ddx) / Math.hypot(dx, dy) / 8) / steps;
    }
    const out: number[] = [x0, y0];
    curves.cubic(out, x0, y0, x1, y1, x2, y2, x3, y3, tol);
    expect(out.length / 2 - 1).toBeLessThanOrEqual((4 / 3) * (integral / Math.sqrt(tol / 2)));
  },
);

test('a quarter circle takes no more points than equal chords of half the tolerance need, and one', () => {
  for (const r of [0.5, 1, 2.5, 5, 20, 100]) {
    const h = (4 / 3) * Math.tan(Math.PI / 8) * r;
    const out: number[] = [];
    curves.cubic(out, r, 0, r, h, h, r, 0, r, 0.005);
    const step = 2 * Math.acos(1 - 0.0025 / r);
    // the bend of the Bézier varies by about a percent along the arc, and pieces are planned an eighth lower
    expect(out.length / 2).toBeLessThanOrEqual(Math.ceil((1.08 * Math.PI) / 2 / step) + 1);
  }
});
