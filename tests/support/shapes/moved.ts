import { type CleanRegion, type Point, packRings, ringCoords } from '@pourproof/plane';
import fc from 'fast-check';
import { expect } from 'vitest';
import { between } from '../../arbitraries.ts';
import { regular, reversed } from './clean-from.ts';

/** Rounding of coordinates some hundreds of millimetres off, some 1e-13, through square roots at most. */
const CLOSE_MM = 1e-5;

/** Flat coordinates of a ring. */
type Ring = readonly number[];

/** A star with straight flanks: tips on the outer circle, notches on the inner one. */
export const star = (tips: number, outer: number, inner: number): number[] =>
  regular(2 * tips, 1).map((v, i) => v * ((i >> 1) % 2 === 0 ? outer : inner));

/** A rosette of rounded petals, flattened evenly. */
export const rosette = (petals: number, radius: number, wave: number): number[] =>
  regular(32 * petals, 1).map((v, i) => v * radius * (1 + wave * Math.cos((2 * Math.PI * (i >> 1)) / 32)));

/** A wheel: as many bars as asked for, that meet in the middle. */
const wheel = (bars: number, length: number, width: number): number[] => {
  const inner = width / 2 / Math.sin(Math.PI / bars);
  return Array.from({ length: bars }, (_, k) => (2 * Math.PI * k) / bars).flatMap((angle) => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const next = angle + Math.PI / bars;
    return [
      ...[length * c + (width / 2) * s, length * s - (width / 2) * c],
      ...[length * c - (width / 2) * s, length * s + (width / 2) * c],
      ...[inner * Math.cos(next), inner * Math.sin(next)],
    ];
  });
};

/** Rings with a symmetry: stars, regular polygons, diamonds, rosettes and wheels. */
export const symmetric: fc.Arbitrary<Ring> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 3, max: 24 }), between(5, 30), between(0.15, 0.95))
    .map(([n, r, k]) => star(n, r, k * r)),
  fc.tuple(fc.integer({ min: 3, max: 40 }), between(0.5, 30)).map(([n, r]) => regular(n, r)),
  fc.tuple(between(2, 30), between(2, 30)).map(([a, b]) => [a, 0, 0, b, -a, 0, 0, -b]),
  fc
    .tuple(fc.integer({ min: 2, max: 9 }), between(5, 20), between(0.05, 0.6))
    .map(([n, r, w]) => rosette(n, r, w)),
  fc
    .tuple(fc.integer({ min: 3, max: 12 }), between(15, 40), between(1, 3))
    .map(([n, l, w]) => wheel(n, l, w)),
);

/** How artwork is turned, mirrored, shifted, subdivided and begun. */
export interface Move {
  readonly turn: number;
  readonly isMirrored: boolean;
  readonly x: number;
  readonly y: number;
  /** Number of the corner at which the ring begins, and shares of edges at which points are added, or none. */
  readonly first: number;
  readonly splits: readonly number[];
}

/** Any move. */
export const moves: fc.Arbitrary<Move> = fc.record({
  turn: between(-3.2, 3.2),
  isMirrored: fc.boolean(),
  x: between(-300, 300),
  y: between(-300, 300),
  first: fc.nat(1000),
  splits: fc.array(between(0.05, 0.95), { maxLength: 5 }),
});

/** A ring moved, still with its inside to the same side. */
export function moved(ring: Ring, { turn, isMirrored, x, y, first, splits }: Move): number[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const n = ring.length / 2;
  const points = Array.from({ length: n }, (_, k) => (k + first) % n).flatMap((k) => {
    const [px, py] = [ring[2 * k], ring[2 * k + 1]];
    const next = (k + 1) % n;
    const at = splits[k % 7];
    const added =
      at === undefined ? [] : [px + at * (ring[2 * next] - px), py + at * (ring[2 * next + 1] - py)];
    return [px, py, ...added];
  });
  const out: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const px = isMirrored ? -points[i] : points[i];
    out.push(x + c * px - s * points[i + 1], y + s * px + c * points[i + 1]);
  }
  return isMirrored ? reversed(out) : out;
}

/** A region moved, ring by ring; another ring is the first. */
export function movedRegion(region: CleanRegion, move: Move): CleanRegion {
  const n = region.ringEnds.length;
  return packRings(
    Array.from({ length: n }, (_, k) => moved([...ringCoords(region, (k + move.first) % n)], move)),
  ) as CleanRegion;
}

/** A point moved along. */
export function movedPoint([px, py]: Point, { turn, isMirrored, x, y }: Move): Point {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const mx = isMirrored ? -px : px;
  return [x + c * mx - s * py, y + s * mx + c * py];
}

/** The azimuth of a fibre that is moved along: counter-clockwise from x on the face, where y points down. */
export function movedAzimuth(rad: number, { turn, isMirrored }: Move): number {
  return (isMirrored ? Math.PI - rad : rad) - turn;
}

/** Whether some point is a corner of two rings, or twice of one: turned, rounding opens such a touch or closes it. */
export const touches = ({ coords }: CleanRegion): boolean =>
  new Set(Array.from({ length: coords.length / 2 }, (_, k) => `${coords[2 * k]} ${coords[2 * k + 1]}`)).size <
  coords.length / 2;

/** Order by the first number that differs by more than rounding. */
export function byFirst(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, i) => Math.abs(value - b[i]) > CLOSE_MM);
  return k < 0 ? 0 : a[k] - b[k];
}

/** Expects two measures to be the same but for rounding: numbers, and lists and records of them. */
export function expectSame(got: unknown, want: unknown, path = ''): void {
  if (typeof want === 'number' && typeof got === 'number') {
    expect(Math.abs(got - want), `${path}: ${got} for ${want}`).toBeLessThan(
      CLOSE_MM * Math.max(1, Math.abs(want)),
    );
  } else if (Array.isArray(want) && Array.isArray(got)) {
    expect(got.length, `${path}: ${JSON.stringify(got)} for ${JSON.stringify(want)}`).toBe(want.length);
    for (const [k, each] of want.entries()) {
      expectSame(got[k], each, `${path}[${k}]`);
    }
  } else if (typeof want === 'object' && want !== null) {
    for (const [key, each] of Object.entries(want)) {
      expectSame((got as Record<string, unknown>)[key], each, `${path}.${key}`);
    }
  } else {
    expect(got, path).toBe(want);
  }
}
