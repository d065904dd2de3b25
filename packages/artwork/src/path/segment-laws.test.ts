import { applyTransform, type Transform } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcSegment } from './arc-segment.ts';
import { inverseTransform } from './inverse-transform.ts';
import type { Segment, Subpath } from './path.ts';
import { pathBounds } from './path-bounds.ts';
import { directionAt, segmentAt } from './segment-at.ts';
import { subpathArea } from './subpath-area.ts';
import { transformPath } from './transform-path.ts';

const coordinate = fc.integer({ min: -50, max: 50 });
const corners = fc.tuple(coordinate, coordinate, coordinate, coordinate);
const line = corners.map(([x0, y0, x, y]): Segment => ({ kind: 'line', x0, y0, x, y }));
const cubic = fc
  .tuple(corners, corners)
  .map(([[x0, y0, x1, y1], [x2, y2, x, y]]): Segment => ({ kind: 'cubic', x0, y0, x1, y1, x2, y2, x, y }));
const arc = fc
  .tuple(
    corners,
    fc.integer({ min: 1, max: 80 }),
    fc.integer({ min: 1, max: 80 }),
    coordinate,
    fc.boolean(),
    fc.boolean(),
  )
  .map(([[x0, y0, x, y], rx, ry, turn, large, sweep]): Segment | null => {
    const found = arcSegment(x0, y0, rx, ry, turn, large, sweep, x, y);
    return found === undefined ? null : { kind: 'arc', x0, y0, x, y, arc: found };
  })
  .filter((found) => found !== null);
const segment = fc.oneof(line, cubic, arc);
const SHARES = [0, 0.1, 0.37, 0.5, 0.81, 1];
const STEPS = 2000;

const alone = (s: Segment): Subpath => ({ x0: s.x0, y0: s.y0, segments: [s], closed: false });
const samples = (s: Segment) => Array.from({ length: STEPS + 1 }, (_, k) => segmentAt(s, k / STEPS));

test('a segment begins and ends where it says', () => {
  fc.assert(
    fc.property(segment, (s) => {
      for (const [t, x, y] of [
        [0, s.x0, s.y0],
        [1, s.x, s.y],
      ] as const) {
        const at = segmentAt(s, t);
        expect(Math.hypot(at.x - x, at.y - y)).toBeLessThan(1e-5);
      }
    }),
  );
});

test('derivatives are the quotients of points', () => {
  const h = 1e-5;
  fc.assert(
    fc.property(segment, fc.constantFrom(0.2, 0.5, 0.77), (s, t) => {
      const [before, at, after] = [segmentAt(s, t - h), segmentAt(s, t), segmentAt(s, t + h)];
      // bound: third derivatives of curves of this size, and rounding over h
      expect(Math.abs((after.x - before.x) / (2 * h) - at.dx)).toBeLessThan(1e-4);
      expect(Math.abs((after.y - before.y) / (2 * h) - at.dy)).toBeLessThan(1e-4);
      expect(Math.abs((after.dx - before.dx) / (2 * h) - at.ddx)).toBeLessThan(1e-2);
      expect(Math.abs((after.dy - before.dy) / (2 * h) - at.ddy)).toBeLessThan(1e-2);
    }),
  );
});

test('the direction is that of a small step, also where control points lie on the end', () => {
  fc.assert(
    fc.property(segment, fc.constantFrom(0.2, 0.5, 0.77), (s, t) => {
      const at = segmentAt(s, t);
      const speed = Math.hypot(at.dx, at.dy);
      fc.pre(speed > 1);
      const [x, y] = directionAt(s, t) ?? [0, 0];
      expect(x).toBeCloseTo(at.dx / speed, 9);
      expect(y).toBeCloseTo(at.dy / speed, 9);
    }),
  );
  const start: Segment = { kind: 'cubic', x0: 0, y0: 0, x1: 0, y1: 0, x2: 3, y2: 4, x: 30, y: 0 };
  const [x, y] = directionAt(start, 0) ?? [0, 0];
  expect(x).toBeCloseTo(0.6, 2);
  expect(y).toBeCloseTo(0.8, 2);
  const end: Segment = { kind: 'cubic', x0: 30, y0: 0, x1: 3, y1: 4, x2: 0, y2: 0, x: 0, y: 0 };
  const [u, v] = directionAt(end, 1) ?? [0, 0];
  expect(u).toBeCloseTo(-0.6, 2);
  expect(v).toBeCloseTo(-0.8, 2);
  expect(directionAt({ kind: 'line', x0: 1, y0: 2, x: 1, y: 2 }, 0)).toBeUndefined();
});

test('the box holds all points and no more', () => {
  fc.assert(
    fc.property(segment, (s) => {
      const [left, top, right, bottom] = pathBounds([alone(s)]);
      const points = samples(s);
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
      // bound: between two samples a curve rises by a sixteenth of its second derivative times the step squared
      for (const [wanted, found] of [
        [left, Math.min(...xs)],
        [-right, -Math.max(...xs)],
        [top, Math.min(...ys)],
        [-bottom, -Math.max(...ys)],
      ] as const) {
        expect(found - wanted).toBeGreaterThan(-1e-6);
        expect(found - wanted).toBeLessThan(1e-3);
      }
    }),
  );
});

test('the area of a segment over its chord is that of the polygon of its points', () => {
  fc.assert(
    fc.property(segment, (s) => {
      const points = samples(s);
      const polygon = points.reduce((sum, { x, y }, k) => {
        const before = points[k === 0 ? points.length - 1 : k - 1]!;
        return sum + ((before.x - s.x0) * (y - s.y0) - (x - s.x0) * (before.y - s.y0)) / 2;
      }, 0);
      expect(Math.abs(subpathArea(alone(s)) - polygon)).toBeLessThan(0.05);
    }),
  );
});

const map = fc
  .tuple(...Array.from({ length: 6 }, () => fc.integer({ min: -4, max: 4 })))
  .map((numbers) => numbers as unknown as Transform);

test('a path through a map has its points through the map, and the inverse leads back', () => {
  fc.assert(
    fc.property(segment, map, (s, t) => {
      const [moved] = transformPath(t, [alone(s)]);
      const [through] = [...(moved?.segments ?? [])];
      for (const share of SHARES) {
        const from = segmentAt(s, share);
        const [x, y] = applyTransform(t, [from.x, from.y]);
        const to = segmentAt(through!, share);
        expect(Math.hypot(to.x - x, to.y - y)).toBeLessThan(1e-6);
        if (t[0] * t[3] - t[1] * t[2] !== 0) {
          const [backX, backY] = applyTransform(inverseTransform(t), [x, y]);
          expect(Math.hypot(backX - from.x, backY - from.y)).toBeLessThan(1e-6);
        }
      }
      expect([moved?.x0, moved?.y0]).toEqual([...applyTransform(t, [s.x0, s.y0])]);
    }),
  );
});
