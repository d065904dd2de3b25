import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { arcSegment } from './arc-segment.ts';

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const radius = fc.double({ min: 0.1, max: 200, noNaN: true });

test('an arc starts and ends at its ends, turns the way and the part that its flags say, on an ellipse of its proportions', () => {
  fc.assert(
    fc.property(
      coordinate,
      coordinate,
      coordinate,
      coordinate,
      radius,
      radius,
      fc.double({ min: -720, max: 720, noNaN: true }),
      fc.boolean(),
      fc.boolean(),
      (x0, y0, x1, y1, rx, ry, turnDeg, large, sweep) => {
        fc.pre(Math.hypot(x1 - x0, y1 - y0) > 0.01);
        const arc = arcSegment(x0, y0, rx, ry, turnDeg, large, sweep, x1, y1)!;
        const at = (a: number): [number, number] => [
          arc.cx + Math.cos(a) * arc.ux + Math.sin(a) * arc.vx,
          arc.cy + Math.cos(a) * arc.uy + Math.sin(a) * arc.vy,
        ];
        // 1e-9 of the size: rounding of a few operations
        const size = 1e-9 * (Math.abs(arc.cx) + Math.abs(arc.cy) + rx + ry + 400);
        expect(Math.hypot(at(arc.start)[0] - x0, at(arc.start)[1] - y0)).toBeLessThan(size * 10);
        expect(Math.hypot(at(arc.end)[0] - x1, at(arc.end)[1] - y1)).toBeLessThan(size * 10);
        const turn = arc.end - arc.start;
        expect(turn > 0).toBe(sweep);
        const isHalf = Math.abs(Math.abs(turn) - Math.PI) < 1e-6;
        expect(isHalf || Math.abs(turn) > Math.PI === large).toBe(true);
        expect(Math.hypot(arc.ux, arc.uy) / Math.hypot(arc.vx, arc.vy) / (rx / ry)).toBeCloseTo(1, 9);
      },
    ),
    cases(500),
  );
});

test.each([
  ['below each other', 0, 10],
  ['beside each other', 10, 0],
])('a half circle joins ends %s; one end alone is no arc', (_how, x, y) => {
  const arc = arcSegment(0, 0, 5, 5, 0, false, true, x, y);
  expect([arc?.cx, arc?.cy]).toEqual([expect.closeTo(x / 2, 12), expect.closeTo(y / 2, 12)]);
  expect(arcSegment(x, y, 5, 5, 0, false, true, x, y)).toBeUndefined();
});
