import {
  leftStanding,
  type MedialAxis,
  medialAxis,
  narrowStretches,
  separateParts,
  strokeLines,
  strokeWidths,
} from '@pourproof/geometry';
import { type CleanRegion, packRings, ringCoords } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, between } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, regular, reversed } from '../support/shapes/clean-from.ts';

type Ring = readonly number[];

/** A star with straight flanks: tips on the outer circle, notches on the inner one. */
const star = (tips: number, outer: number, inner: number): number[] =>
  regular(2 * tips, 1).map((v, i) => v * ((i >> 1) % 2 === 0 ? outer : inner));

/** A rosette of rounded petals, flattened evenly. */
const rosette = (petals: number, radius: number, wave: number): number[] =>
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

const symmetric: fc.Arbitrary<Ring> = fc.oneof(
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

interface Move {
  readonly turn: number;
  readonly isMirrored: boolean;
  readonly x: number;
  readonly y: number;
  /** Number of the corner at which the ring begins, and shares of edges at which points are added, or none. */
  readonly first: number;
  readonly splits: readonly number[];
}

const moves: fc.Arbitrary<Move> = fc.record({
  turn: between(-3.2, 3.2),
  isMirrored: fc.boolean(),
  x: between(-300, 300),
  y: between(-300, 300),
  first: fc.nat(1000),
  splits: fc.array(between(0.05, 0.95), { maxLength: 5 }),
});

function moved(ring: Ring, { turn, isMirrored, x, y, first, splits }: Move): number[] {
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

/** Whether some point is a corner of two rings, or twice of one: turned, rounding opens such a touch or closes it. */
const touches = ({ coords }: CleanRegion): boolean =>
  new Set(Array.from({ length: coords.length / 2 }, (_, k) => `${coords[2 * k]} ${coords[2 * k + 1]}`)).size <
  coords.length / 2;

/** Order by the first number that differs by more than rounding. */
function byFirst(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, i) => Math.abs(value - b[i]) > CLOSE_MM);
  return k < 0 ? 0 : a[k] - b[k];
}

/** Every public measure of strokes in numbers that have no place and no order. */
function measures(axis: MedialAxis) {
  const widths = strokeWidths(axis);
  const sizes = [0.3, 1, 3, 7];
  const stretches = (limit: number) =>
    narrowStretches(axis, limit).toSorted((a, b) => a.lengthMm - b.lengthMm);
  const total = (kind: string) => strokeLines(axis).filter((line) => line.kind === kind);
  return {
    narrowest: widths.narrowestMm,
    length: widths.lengthMm,
    below: sizes.map(widths.lengthNarrowerThan),
    stretches: sizes.map((limit) =>
      stretches(limit).map(({ lengthMm, narrowestMm }) => [lengthMm, narrowestMm]),
    ),
    kinds: sizes.map((limit) =>
      stretches(limit)
        .map(({ kind }) => kind)
        .sort(),
    ),
    widestOfLines: ['stroke', 'taper'].map((kind) =>
      Math.max(0, ...total(kind).flatMap((line) => [...line.widths])),
    ),
    parts: separateParts(axis)
      .map(({ widthMm, strokeMm }) => [widthMm, strokeMm])
      .toSorted(byFirst),
    standing: sizes.map((bit) =>
      leftStanding(axis, bit / 2, 0.005)
        .pieces.map((piece) => [
          piece.areaMm2,
          piece.shortMm ?? -1,
          piece.widestMm,
          piece.lengthMm,
          piece.mouths,
          piece.branch?.reachMm ?? -1,
          piece.branch?.widthMm ?? -1,
        ])
        .toSorted(byFirst),
    ),
  };
}

/** Rounding of coordinates some hundreds of millimetres off, some 1e-13, through square roots at most. */
const CLOSE_MM = 1e-5;

function expectSame(got: unknown, want: unknown, path = ''): void {
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

describe('no measure of strokes hangs on how artwork is turned, mirrored, subdivided or begun', () => {
  test('of symmetric shapes', () => {
    fc.assert(
      fc.property(symmetric, moves, (ring, move) => {
        expectSame(
          measures(medialAxis(cleanFrom([moved(ring, move)]))),
          measures(medialAxis(cleanFrom([ring]))),
        );
      }),
      cases(150),
    );
  });

  test('of any polygon', () => {
    fc.assert(
      fc.property(
        anyPolygon.filter((region) => !touches(region)),
        moves,
        (region, move) => {
          const rings = Array.from(region.ringEnds, (_, k) => [...ringCoords(region, k)]);
          const axis = medialAxis(packRings(rings.map((ring) => moved(ring, move))) as CleanRegion);
          expectSame(measures(axis), measures(medialAxis(region)));
        },
      ),
      cases(150),
    );
  });

  test('a region that is not empty has a narrowest width', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          symmetric.map((ring) => cleanFrom([ring])),
          anyPolygon,
        ),
        (region) => {
          expect(strokeWidths(medialAxis(region)).narrowestMm).toBeGreaterThan(0);
        },
      ),
      cases(150),
    );
  });
});
