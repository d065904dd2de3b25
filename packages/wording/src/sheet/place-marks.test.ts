import { type Bounds, type Point, packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeMarks } from './place-marks.ts';

const BOUNDS: Bounds = [0, 0, 200, 120];
const NOTHING = packRings([]);
const RADIUS = 2.5;

function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(ax - bx, ay - by);
}

describe('numbered marks', () => {
  test('keep off one another, off their place and inside the picture where there is room', () => {
    const places = Array.from({ length: 12 }, (_, k) => ({
      label: `1${k}`,
      atMm: [20 + 14 * k, 60 + (k % 3)] as Point,
    }));
    const marks = placeMarks(places, RADIUS, { bounds: BOUNDS, drawn: NOTHING });
    marks.forEach((mark, k) => {
      expect(mark.atMm).toEqual(places[k]?.atMm);
      expect(distance(mark.discMm, mark.atMm)).toBeGreaterThan(RADIUS);
      expect(mark.discMm[0]).toBeGreaterThan(RADIUS);
      expect(mark.discMm[0]).toBeLessThan(200 - RADIUS);
      for (const other of marks.slice(k + 1)) {
        expect(distance(mark.discMm, other.discMm)).toBeGreaterThan(2 * RADIUS);
      }
    });
  });

  test('stay inside the picture for places at its very corners', () => {
    fc.assert(
      fc.property(fc.constantFrom<Point>([0, 0], [200, 0], [200, 120], [0, 120]), (corner) => {
        const [mark] = placeMarks([{ label: '1', atMm: corner }], RADIUS, { bounds: BOUNDS, drawn: NOTHING });
        const [x, y] = mark?.discMm ?? [-1, -1];
        expect(Math.min(x, 200 - x, y, 120 - y)).toBeGreaterThanOrEqual(RADIUS);
      }),
    );
  });

  test('turn away from what is drawn', () => {
    // a comb of lines fills all above the place; below it is free
    const comb = packRings(
      Array.from({ length: 60 }, (_, k) => [70 + k, 20, 70.5 + k, 20, 70.5 + k, 59, 70 + k, 59]),
    );
    const [mark] = placeMarks([{ label: '1', atMm: [100, 60] }], RADIUS, { bounds: BOUNDS, drawn: comb });
    expect(mark?.discMm[1]).toBeGreaterThan(60);
  });
});
