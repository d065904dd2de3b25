import { packRings, ringArea } from '@pourproof/plane';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { uniteRegions } from '../clip/clip-region.ts';
import { type Path, PathBuilder, type Segment } from '../path/path.ts';
import { measureSegment } from './segment-length.ts';
import { type StrokeStyle, strokeSubpath } from './stroke-outline.ts';

const STYLE: StrokeStyle = { width: 2, cap: 'butt', join: 'round', miterLimit: 4 };

function strokeOutline(path: Path, style: StrokeStyle, tolerance: number): number[][] {
  const rings: number[][] = [];
  for (const sub of path) {
    strokeSubpath(sub, style, tolerance, (ring) => rings.push(ring));
  }
  return rings;
}

function polyline(points: readonly (readonly [number, number])[], close = false): Path {
  const out = new PathBuilder();
  for (const [i, [x, y]] of points.entries()) {
    if (i === 0) {
      out.moveTo(x, y);
    } else {
      out.lineTo(x, y);
    }
  }
  if (close) {
    out.close();
  }
  return out.path();
}

function cubic(c: readonly number[]): Path {
  const out = new PathBuilder();
  const [x0, y0, x1, y1, x2, y2, x3, y3] = c;
  out.moveTo(x0, y0);
  out.cubicTo(x1, y1, x2, y2, x3, y3);
  return out.path();
}

/** Winding number of rings about a point, by crossings of a ray towards +x. */
function winding(rings: readonly (readonly number[])[], x: number, y: number): number {
  let turns = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[j], ring[j + 1]];
      if (ay <= y !== by <= y && ax + ((y - ay) / (by - ay)) * (bx - ax) > x) {
        turns += by > ay ? 1 : -1;
      }
    }
  }
  return turns;
}

/** Distance from a point to a path, by fine sampling of its segments' points. */
function distance(samples: readonly (readonly [number, number])[], x: number, y: number): number {
  return samples.reduce((least, [sx, sy]) => Math.min(least, Math.hypot(sx - x, sy - y)), Infinity);
}

const coordinate = fc.integer({ min: 0, max: 20 });
const point = fc.tuple(coordinate, coordinate);

describe('the outline of a stroke', () => {
  test('never turns against itself: every point has a winding number of 0 or more', () => {
    fc.assert(
      fc.property(
        fc.array(coordinate, { minLength: 8, maxLength: 8 }),
        fc.double({ min: 0.5, max: 12, noNaN: true }),
        fc.array(
          fc.tuple(
            fc.double({ min: -5, max: 25, noNaN: true }),
            fc.double({ min: -5, max: 25, noNaN: true }),
          ),
          {
            minLength: 20,
            maxLength: 20,
          },
        ),
        (c, width, probes) => {
          const rings = strokeOutline(cubic(c), { ...STYLE, width, cap: 'round' }, 0.01);
          for (const [x, y] of probes) {
            expect(winding(rings, x, y)).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      cases(200),
    );
  });

  test('with round caps and joins holds exactly the points within half the width of a polyline', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(point, { minLength: 2, maxLength: 6, selector: ([x, y]) => `${x} ${y}` }),
        fc.boolean(),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: -4, max: 24, noNaN: true }),
        fc.double({ min: -4, max: 24, noNaN: true }),
        (points, close, width, x, y) => {
          const path = polyline(points, close);
          const rings = strokeOutline(path, { ...STYLE, width, cap: 'round' }, 0.001);
          const samples = path.flatMap((sub) =>
            Array.from(sub.segments).flatMap((s) =>
              Array.from(
                { length: 2001 },
                (_, i) => [s.x0 + (i / 2000) * (s.x - s.x0), s.y0 + (i / 2000) * (s.y - s.y0)] as const,
              ),
            ),
          );
          const off = distance(samples, x, y) - width / 2;
          // nearer to the edge than the sampling and the flattening tell apart, nothing is claimed
          fc.pre(Math.abs(off) > 0.02);
          expect(winding(rings, x, y) > 0).toBe(off < 0);
        },
      ),
      cases(200),
    );
  });

  test('of a smooth curve without overlaps has the area of its length times its width', () => {
    for (const tolerance of [0.1, 0.01, 0.001]) {
      const path = cubic([0, 0, 20, -10, 40, 30, 60, 10]);
      const [ring] = strokeOutline(path, STYLE, tolerance);
      const length = Array.from(path[0].segments).reduce((sum, s) => sum + measureSegment(s).total, 0);
      // exact but for the quadrature: the same at every tolerance
      expect(Math.abs(ringArea(ring) - 2 * length)).toBeLessThan(1e-6 * length);
    }
  });

  test('of a curve tighter than half the width has no hole', () => {
    const rings = strokeOutline(
      cubic([0, 0, 30, 0, 30, 1, 0, 1]),
      { ...STYLE, width: 12, cap: 'butt' },
      0.001,
    );
    const united = uniteRegions([{ ...packRings(rings), fillRule: 'nonzero' }]);
    const holes = Array.from(united.ringEnds, (end, k) =>
      ringArea(united.coords, k === 0 ? 0 : united.ringEnds[k - 1], end),
    ).filter((area) => area < -1e-6);
    expect(holes).toEqual([]);
  });

  test('no width paints nothing', () => {
    expect(
      strokeOutline(
        polyline([
          [0, 0],
          [9, 9],
        ]),
        { ...STYLE, width: 0 },
        0.01,
      ),
    ).toEqual([]);
  });
});

test('a path and its stroke in another unit have the same outline', () => {
  // round joins and caps a thousandth of a millimetre wide, in steps that leave every digit as it is
  const by = 2 ** -20;
  const points = [
    [0, 0],
    [8, 0],
    [8, 5],
    [2, 9],
  ] as const;
  const style: StrokeStyle = { ...STYLE, cap: 'round' };
  const small = polyline(points.map(([x, y]) => [x * by, y * by]));
  const rings = strokeOutline(small, { ...style, width: style.width * by }, 0.01 * by);
  expect(rings.map((ring) => ring.map((v) => v / by))).toEqual(strokeOutline(polyline(points), style, 0.01));
});

test('an arc too short to have a direction leaves no gap, first or between', () => {
  const at = (x: number): Segment => ({
    ...{ kind: 'arc', x0: x, y0: 0, x, y: 0 },
    arc: { cx: x, cy: 5, ux: 5, uy: 0, vx: 0, vy: 5, start: -Math.PI / 2, end: -Math.PI / 2 + 1e-13 },
  });
  const segments: Segment[] = [
    at(0),
    { kind: 'line', x0: 0, y0: 0, x: 10, y: 0 },
    at(10),
    { kind: 'line', x0: 10, y0: 0, x: 20, y: 0 },
  ];
  const rings = strokeOutline([{ x0: 0, y0: 0, segments, closed: false }], STYLE, 0.01);
  expect(rings.flat().every(Number.isFinite)).toBe(true);
  expect(rings.reduce((sum, ring) => sum + ringArea(ring), 0)).toBeCloseTo(20 * STYLE.width, 6);
});
