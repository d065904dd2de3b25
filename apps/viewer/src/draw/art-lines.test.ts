import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ArtLines } from './art-lines.ts';
import { thinnedLine } from './thinned-line.ts';

const coordinate = fc.integer({ min: -4000, max: 4000 }).map((value) => value / 16);
const lineOf = (max: number): fc.Arbitrary<Float32Array> =>
  fc
    .array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: max })
    .map((points) => Float32Array.from(points.flat()));

/** Distance of a point from a line. */
function distance(line: Float32Array, x: number, y: number): number {
  let least = Math.hypot((line[0] as number) - x, (line[1] as number) - y);
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [ax, ay, bx, by] = line.subarray(i, i + 4) as unknown as [number, number, number, number];
    const length2 = (bx - ax) ** 2 + (by - ay) ** 2;
    const share = length2 === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2;
    const along = Math.min(Math.max(share, 0), 1);
    least = Math.min(least, Math.hypot(ax + along * (bx - ax) - x, ay + along * (by - ay) - y));
  }
  return least;
}

test('a thinned line ends where it ended, has points of its own only, and passes every point within the tolerance', () => {
  fc.assert(
    fc.property(lineOf(600), fc.double({ min: 0, max: 60, noNaN: true }), (line, tolerance) => {
      const thinned = thinnedLine(line, tolerance);
      expect(thinned.subarray(0, 2)).toEqual(line.subarray(0, 2));
      expect(thinned.subarray(-2)).toEqual(line.subarray(-2));
      // in the order of the line
      let at = 0;
      for (let i = 0; i < thinned.length; i += 2) {
        while (line[at] !== thinned[i] || line[at + 1] !== thinned[i + 1]) {
          at += 2;
          expect(at).toBeLessThan(line.length);
        }
        at += 2;
      }
      for (let i = 0; i < line.length; i += 2) {
        const off = distance(thinned, line[i] as number, line[i + 1] as number);
        expect(off).toBeLessThanOrEqual(tolerance * (1 + 1e-6) + 1e-9);
      }
    }),
    { numRuns: 60 },
  );
});

test('a circle of 3000 points is thinned to as many as its arrow height asks for', () => {
  const circle = Float32Array.from({ length: 6002 }, (_, i) => {
    const turn = (Math.floor(i / 2) / 3000) * 2 * Math.PI;
    return 20 * (i % 2 === 0 ? Math.cos(turn) : Math.sin(turn));
  });
  const points = thinnedLine(circle, 0.01).length / 2;
  // chords with an arrow of 0.01 mm on a radius of 20 mm turn by 2 acos(1 − 0.01/20) = 3.6°: 100 of them
  expect(points).toBeGreaterThanOrEqual(100);
  expect(points).toBeLessThan(280);
});

test('only lines whose box meets the window are drawn, open ones first, and few scales are kept', () => {
  const bar = (x: number): number[] => [x, 0, x + 5, 0.001, x + 10, 0];
  const lines = new ArtLines({
    name: 'cut',
    coords: Float32Array.from([...bar(0), ...bar(100), ...bar(200)]),
    ends: Uint32Array.of(3, 6, 9),
    openCount: 1,
  });
  const seen = (left: number, right: number, pxPerMm: number): (readonly [number, boolean, number])[] => {
    const found: (readonly [number, boolean, number])[] = [];
    lines.inSight([left, -1, right, 1], pxPerMm, (line, isClosed) =>
      found.push([line[0] as number, isClosed, line.length / 2]),
    );
    return found;
  };
  expect(seen(-50, 400, 4)).toEqual([
    [0, false, 2],
    [100, true, 2],
    [200, true, 2],
  ]);
  expect(seen(110, 150, 4)).toEqual([[100, true, 2]]);
  expect(seen(111, 199, 4)).toEqual([]);
  // half a pixel of height shows
  expect(seen(90, 150, 500)).toEqual([[100, true, 3]]);
  for (let scale = 1; scale < 2000; scale *= 2) {
    seen(-50, 400, scale);
  }
  expect(lines.levelCount).toBe(3);
});
