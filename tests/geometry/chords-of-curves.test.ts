import { readSvg } from '@pourproof/artwork/svg';
import { curvedEdges } from '@pourproof/geometry';
import type { Rings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, magnitude } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { arcPiece, type CurvePiece, cubicPiece, farthest, pointAt } from '../support/shapes/curve-piece.ts';

type Point = readonly [number, number];

/** A curve with its path data from its start on. */
interface Drawn {
  readonly start: Point;
  readonly data: string;
  readonly end: Point;
  readonly piece: CurvePiece;
}

const cubic = ([a, b, c, d]: readonly [Point, Point, Point, Point]): Drawn => ({
  start: a,
  data: `C${b.join(' ')} ${c.join(' ')} ${d.join(' ')}`,
  end: d,
  piece: cubicPiece([...a, ...b, ...c, ...d]),
});

const mix = ([ax, ay]: Point, [bx, by]: Point, t: number): Point => [ax + t * (bx - ax), ay + t * (by - ay)];

const quadratic = ([a, b, c]: readonly [Point, Point, Point]): Drawn => ({
  ...cubic([a, mix(a, b, 2 / 3), mix(c, b, 2 / 3), c]),
  data: `Q${b.join(' ')} ${c.join(' ')}`,
});

/** From 2 µm to 2 m, mostly as large as letters. */
const size = fc.oneof(
  { weight: 3, arbitrary: magnitude(-0.5, 1.7) },
  { weight: 1, arbitrary: magnitude(-2.7, 3.3) },
);
const unit = between(-1, 1);
const point: fc.Arbitrary<Point> = fc.tuple(unit, unit);
const tiny = magnitude(-9, -1);
const near = (p: fc.Arbitrary<Point>): fc.Arbitrary<readonly [Point, Point]> =>
  fc.tuple(p, tiny, point).map(([q, e, [x, y]]) => [q, [q[0] + e * x, q[1] + e * y]]);

/** Curves of a square of side 2: any, with handles of no length, hairpins, hardly bent ones, loops and cusps. */
const shapes: fc.Arbitrary<readonly [Point, Point, Point, Point]> = fc.oneof(
  fc.tuple(point, point, point, point),
  fc.tuple(point, point, point).map(([a, c, d]): [Point, Point, Point, Point] => [a, a, c, d]),
  fc.tuple(point, point, point).map(([a, b, d]): [Point, Point, Point, Point] => [a, b, d, d]),
  fc.tuple(near(point), near(point)).map(([[a, d], [b, c]]): [Point, Point, Point, Point] => [a, b, c, d]),
  fc
    .tuple(point, point, between(-1, 2), between(-1, 2), tiny, point, point)
    .map(([a, d, s, t, e, p, q]): [Point, Point, Point, Point] => {
      const [b, c] = [mix(a, d, s), mix(a, d, t)];
      return [a, [b[0] + e * p[0], b[1] + e * p[1]], [c[0] + e * q[0], c[1] + e * q[1]], d];
    }),
  fc
    .tuple(point, point, point, between(0.5, 2))
    .map(([a, b, c, k]): [Point, Point, Point, Point] => [
      a,
      c,
      b,
      [a[0] + k * (b[0] - c[0]), a[1] + k * (b[1] - c[1])],
    ]),
);

const scaled = (p: Point, k: number): Point => [k * p[0], k * p[1]];
const cubics = fc
  .tuple(shapes, size)
  .map(([[a, b, c, d], k]) => cubic([scaled(a, k), scaled(b, k), scaled(c, k), scaled(d, k)]));
const quadratics = fc
  .tuple(point, point, point, size)
  .map(([a, b, c, k]) => quadratic([scaled(a, k), scaled(b, k), scaled(c, k)]));

/** Arcs of ellipses as thin as a thousandth. */
const arcs = fc
  .tuple(size, magnitude(-3, 0), between(0, 6), between(0.05, 6.2), between(0, 6))
  .map(([a, flat, from, sweep, turn]): Drawn => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const arc = { ux: a * c, uy: a * s, vx: -a * flat * s, vy: a * flat * c };
    const piece = arcPiece(arc, from, from + sweep);
    const [start, end] = [pointAt(arc, from), pointAt(arc, from + sweep)];
    const degrees = (turn * 180) / Math.PI;
    return {
      start,
      data: `A${a} ${a * flat} ${degrees} ${Number(sweep > Math.PI)} 1 ${end.join(' ')}`,
      end,
      piece,
    };
  });

/** The ring that the reader makes of a curve that two lines close to a far point. */
function ringOf({ start, data }: Drawn, far: Point, toleranceMm: number): Rings {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">
    <path d="M${start.join(' ')}${data}L${far.join(' ')}z"/></svg>`;
  return readSvg(svg, { toleranceMm }).shapes[0]!.region;
}

/** Straight lines: what a curve may leave them by, mm, with the rounding of arcs of 2 m from their ends on. */
const STRAIGHT_MM = 1e-8;

test('a curve lies within the tolerance of its chords, and none that it leaves is told as straight', () => {
  fc.assert(
    fc.property(
      fc.oneof({ weight: 3, arbitrary: cubics }, quadratics, arcs),
      magnitude(-3, Math.log10(0.05)),
      (drawn, toleranceMm) => {
        // mostly corners at both ends of the curve, where their turns tell nothing
        const { start, end, piece } = drawn;
        const reach = 3 * Math.hypot(end[0] - start[0], end[1] - start[1]) + 1;
        const ring = ringOf(drawn, [start[0] + reach, start[1] + reach], toleranceMm);
        const told = curvedEdges(ring, toleranceMm);
        const allowed = (edge: number): number =>
          told[edge] === 1 ? toleranceMm * (1 + 1e-9) + STRAIGHT_MM : STRAIGHT_MM;
        expect(farthest(piece, ring.coords, allowed)).toBeLessThan(1 + 1e-6);
      },
    ),
    cases(40),
  );
});

test('an edge shorter than twice the tolerance counts as a chord beside one, and not beside straight edges', () => {
  // up a slightly bent edge, over a tip, and down a straight one
  const told = (tipMm: number): number[] => {
    const ring = [0, 0, 0, -5, 0.035, -5.2, 0.035 + tipMm, -5.2, 0.05, 0];
    return [...curvedEdges({ coords: Float64Array.from(ring), ringEnds: Uint32Array.of(5) }, 0.005)];
  };
  expect(told(0.009)).toEqual([0, 1, 1, 0, 0]);
  expect(told(0.011)).toEqual([0, 1, 0, 0, 0]);
  const square = [0, 0, 0.008, 0, 0.008, 3, 0, 3];
  const edges = curvedEdges({ coords: Float64Array.from(square), ringEnds: Uint32Array.of(4) }, 0.005);
  expect([...edges]).toEqual([0, 0, 0, 0]);
});
