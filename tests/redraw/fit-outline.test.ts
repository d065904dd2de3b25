import {
  type CleanRegion,
  packRings,
  perimeter,
  ringCoords,
  rotation,
  signedArea,
  transformRings,
} from '@pourproof/plane';
import { fitOutlines, type OutlinePath, roundedTips, type XY } from '@pourproof/redraw';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, between, letters } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { offOutline } from '../support/oracles/off-outline.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';

const TOLERANCE = { chordMm: 0.0005, fitMm: 0.004 };
/** Kinks below are rounding, radians. */
const EXACT_RAD = 1e-9;
/** Points on each piece of an outline where it is compared. */
const BETWEEN = 200;

const piecesOf = (paths: readonly OutlinePath[]): number =>
  paths.reduce((sum, { pieces }) => sum + pieces.length, 0);

test('a circle of chords becomes four arcs of the circle, a square stays a square', () => {
  const [circle] = fitOutlines(
    chords((t) => [5 * Math.cos(t), 5 * Math.sin(t)], 400),
    { chordMm: 0.0005, fitMm: 0.004 },
  );
  expect(circle!.pieces.every(({ kind }) => kind === 'arc')).toBe(true);
  expect(circle!.pieces.length).toBeLessThanOrEqual(4);
  const [square] = fitOutlines(cleanFrom([[0, 0, 10, 0, 10, 10, 0, 10]]), TOLERANCE);
  expect(square!.pieces.map(({ kind, to }) => [kind, ...to])).toEqual([
    ['line', 10, 0],
    ['line', 10, 10],
    ['line', 0, 10],
    ['line', 0, 0],
  ]);
});

describe('random outlines', () => {
  test('of straight sides stay as they are, points and all', () => {
    fc.assert(
      fc.property(anyPolygon, (region) => {
        const paths = fitOutlines(region, { chordMm: 1e-7, fitMm: 1e-6 });
        expect(paths.length).toBe(region.ringEnds.length);
        paths.forEach((path, k) => {
          expect(offOutline(ends(path), packRings([ringCoords(region, k)]))).toBeLessThan(1e-6);
          expect(offOutline(ringCoords(region, k), packRings([sampled(path)]))).toBeLessThan(2e-6);
        });
      }),
      cases(20),
    );
  });

  test('of letters keep the tolerance both ways, their areas, and their corners to a nanometre', async () => {
    await fc.assert(
      fc.asyncProperty(letters, async ({ text, face, capHeightMm }) => {
        const region = await lettered(text, face, capHeightMm, TOLERANCE.chordMm);
        const paths = fitOutlines(region, TOLERANCE);
        paths.forEach((path, k) => {
          const ring = packRings([ringCoords(region, k)]);
          const drawn = packRings([sampled(path)]);
          expect(path.offMm).toBeLessThanOrEqual(TOLERANCE.fitMm);
          expect(offOutline(drawn.coords, ring)).toBeLessThanOrEqual(path.offMm + 1e-7);
          expect(offOutline(ring.coords, drawn)).toBeLessThanOrEqual(path.offMm + TOLERANCE.chordMm);
          expect(Math.abs(areaOf(path) - signedArea(ring))).toBeLessThan(
            2e-4 * TOLERANCE.fitMm * perimeter(ring) + 1e-6,
          );
          for (const [x, y] of sharpCorners(region, k)) {
            const nearest = Math.min(
              ...[path.start, ...path.pieces.map(({ to }) => to)].map(([px, py]) =>
                Math.hypot(px - x, py - y),
              ),
            );
            expect(nearest).toBeLessThan(1e-6);
          }
        });
      }),
      cases(4),
    );
  });
});

test('an outline that is turned has as many nodes, but for a few', async () => {
  const region = await lettered('Rag', 'lora-400.ttf', 12, TOLERANCE.chordMm);
  const nodes = piecesOf(fitOutlines(region, TOLERANCE));
  fc.assert(
    fc.property(between(0, 6), (turn) => {
      const turned = transformRings(rotation(turn), region);
      expect(Math.abs(piecesOf(fitOutlines(turned, TOLERANCE)) - nodes)).toBeLessThanOrEqual(
        Math.ceil(nodes / 20),
      );
    }),
    cases(3),
  );
});

test('pieces go on into each other without a kink, where no corner was drawn', () => {
  const wave = chords(
    (t) => [(8 + Math.sin(3 * t)) * Math.cos(t), (6 + Math.cos(2 * t)) * Math.sin(t)],
    2500,
  );
  const [path] = fitOutlines(wave, TOLERANCE);
  expect(path!.pieces.length).toBeLessThan(30);
  expect(worstKink(path!)).toBeLessThan(EXACT_RAD);
});

test('arcs go on into lines, curves and other arcs without a kink, and stay arcs', () => {
  fc.assert(
    fc.property(between(0, 6), between(0.3, 3), (turn, radius) => {
      const bar = cleanFrom([[0, 0, 30, 2, 27, 12, 3, 9]]);
      const turned = transformRings(rotation(turn), bar) as CleanRegion;
      const [rounded] = fitOutlines(roundedTips(turned, radius, TOLERANCE.chordMm).region, TOLERANCE);
      expect(rounded!.pieces.map(({ kind }) => kind).sort()).toEqual([
        ...Array.from({ length: 4 }, () => 'arc'),
        ...Array.from({ length: 4 }, () => 'line'),
      ]);
      expect(worstKink(rounded!)).toBeLessThan(EXACT_RAD);
      expect(rounded!.offMm).toBeLessThan(TOLERANCE.fitMm / 4);
    }),
    cases(10),
  );
});

function worstKink({ start, pieces }: OutlinePath): number {
  return Math.max(
    ...pieces.map((piece, k) => {
      const next = pieces[(k + 1) % pieces.length]!;
      return kink(tangents(k === 0 ? start : pieces[k - 1]!.to, piece)[1], tangents(piece.to, next)[0]);
    }),
  );
}

/** Chords of a closed curve whose points are moved out so that they have its area. */
function chords(at: (t: number) => XY, count: number): CleanRegion {
  return cleanFrom([Array.from({ length: count }, (_, i) => at((2 * Math.PI * i) / count)).flat()]);
}

function ends({ start, pieces }: OutlinePath): number[] {
  return [...start, ...pieces.flatMap(({ to }) => to)];
}

/** Points along an outline, without the last, which is the first. */
function sampled({ start, pieces }: OutlinePath): number[] {
  let from = start;
  return pieces.flatMap((piece) => {
    const begin = from;
    from = piece.to;
    const count = piece.kind === 'line' ? 1 : BETWEEN;
    return Array.from({ length: count }, (_, p) => pointOn(begin, piece, p / count)).flat();
  });
}

function pointOn(from: XY, piece: OutlinePath['pieces'][number], t: number): XY {
  const { to } = piece;
  switch (piece.kind) {
    case 'line':
      return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    case 'cubic': {
      const [[bx, by], [cx, cy]] = piece.control;
      const s = 1 - t;
      const w = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t] as const;
      return [
        w[0] * from[0] + w[1] * bx + w[2] * cx + w[3] * to[0],
        w[0] * from[1] + w[1] * by + w[2] * cy + w[3] * to[1],
      ];
    }
    case 'arc': {
      const up = (1 - piece.bulge ** 2) / (4 * piece.bulge);
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      const [cx, cy] = [from[0] + dx / 2 - dy * up, from[1] + dy / 2 + dx * up];
      const turn = 4 * Math.atan(piece.bulge) * t;
      const [ux, uy] = [from[0] - cx, from[1] - cy];
      return [cx + ux * Math.cos(turn) - uy * Math.sin(turn), cy + ux * Math.sin(turn) + uy * Math.cos(turn)];
    }
  }
}

/** Directions in which a piece begins and ends. */
function tangents([x, y]: XY, piece: OutlinePath['pieces'][number]): readonly [XY, XY] {
  const [toX, toY] = piece.to;
  if (piece.kind === 'cubic') {
    const [[bx, by], [cx, cy]] = piece.control;
    return [
      [bx - x, by - y],
      [toX - cx, toY - cy],
    ];
  }
  const half = piece.kind === 'arc' ? 2 * Math.atan(piece.bulge) : 0;
  const along = Math.atan2(toY - y, toX - x);
  return [
    [Math.cos(along - half), Math.sin(along - half)],
    [Math.cos(along + half), Math.sin(along + half)],
  ];
}

function kink([ax, ay]: XY, [bx, by]: XY): number {
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

/** Signed area with true curves: arcs by their sectors, cubics by Green's theorem on many points. */
function areaOf(path: OutlinePath): number {
  let from = path.start;
  let area = 0;
  for (const piece of path.pieces) {
    const count = piece.kind === 'line' ? 1 : 64;
    let before = from;
    let [chordSum, halfSum] = [0, 0];
    for (let p = 1; p <= count; p++) {
      const at = p === count ? piece.to : pointOn(from, piece, p / count);
      chordSum += (before[0] * at[1] - before[1] * at[0]) / 2;
      before = at;
    }
    before = from;
    for (let p = 2; p <= count; p += 2) {
      const at = p === count ? piece.to : pointOn(from, piece, p / count);
      halfSum += (before[0] * at[1] - before[1] * at[0]) / 2;
      before = at;
    }
    // Richardson: the error of chords falls with the square of their number
    area += piece.kind === 'line' ? chordSum : chordSum + (chordSum - halfSum) / 3;
    from = piece.to;
  }
  return area;
}

/** Points of ring k where it turns by more than 60°, with sides of at least 0.2 mm: nobody would call them anything but corners. */
function sharpCorners(region: CleanRegion, k: number): XY[] {
  const ring = ringCoords(region, k);
  const n = ring.length / 2;
  const at = (i: number): XY => [ring[2 * ((i + n) % n)]!, ring[2 * ((i + n) % n) + 1]!];
  return Array.from({ length: n }, (_, i) => i)
    .filter((i) => {
      const [a, b, c] = [at(i - 1), at(i), at(i + 1)];
      const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
      return (
        Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy)) > Math.PI / 3 &&
        Math.min(Math.hypot(ux, uy), Math.hypot(vx, vy)) > 0.2
      );
    })
    .map(at);
}
