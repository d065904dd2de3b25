import { ringArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { joinChains } from './join-chains.ts';

const piece = (...coords: number[]) => ({ coords });

describe('open chains', () => {
  test('tell both ends, the gap and the piece', () => {
    const { rings, open } = joinChains([piece(0, 0, 10, 0), piece(10, 4, 10, 0)], 0.1);
    expect(rings).toEqual([]);
    expect(open).toHaveLength(1);
    expect([open[0].atMm, open[0].otherMm]).toContainEqual([0, 0]);
    expect([open[0].atMm, open[0].otherMm]).toContainEqual([10, 4]);
    expect(open[0].gapMm).toBeCloseTo(Math.hypot(10, 4), 12);
  });

  test('a short line is not closed on itself', () => {
    const { rings, open } = joinChains([piece(0, 0, 0.03, 0)], 0.05);
    expect(rings).toEqual([]);
    expect(open).toHaveLength(1);
  });

  test('of three ends close together the nearest two are joined', () => {
    const lines = [piece(0, 0, 10, 0), piece(10.01, 0, 10, 10), piece(10, 10, 0, 0), piece(10.04, 0, 30, 0)];
    const { rings, open, gaps } = joinChains(lines, 0.05);
    expect(gaps).toHaveLength(1);
    expect(gaps[0].widthMm).toBeCloseTo(0.01, 9);
    expect(rings).toHaveLength(1);
    expect(open.map((chain) => chain.piece)).toEqual([3]);
  });
});

describe('lines through one node', () => {
  test('petals make as many outlines as there are, whatever their number and order', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.infiniteStream(fc.nat()), (n, order) => {
        const petals = Array.from({ length: n }, (_, k) => {
          const at = (a: number): [number, number] => [
            20 * Math.cos((2 * Math.PI * (k + a)) / n),
            20 * Math.sin((2 * Math.PI * (k + a)) / n),
          ];
          return [piece(0, 0, ...at(0.1)), piece(...at(0.4), ...at(0.1)), piece(0, 0, ...at(0.4))];
        }).flat();
        const ranked = petals.map((p) => ({ p, rank: order.next().value as number }));
        ranked.sort((a, b) => a.rank - b.rank);
        const { rings, open, branches } = joinChains(
          ranked.map(({ p }) => p),
          0.05,
        );
        expect(open).toEqual([]);
        expect(branches).toEqual([]);
        const area = rings.reduce((sum, { coords }) => sum + Math.abs(ringArea(coords)), 0);
        expect(area).toBeCloseTo(n * 200 * Math.sin((2 * Math.PI * 0.3) / n), 6);
      }),
      cases(60),
    );
  });

  test('a star of lines alone is all open', () => {
    const star = Array.from({ length: 500 }, (_, k) => piece(0, 0, 50 * Math.cos(k), 50 * Math.sin(k)));
    const { rings, open } = joinChains(star, 0.05);
    expect(rings).toEqual([]);
    expect(open).toHaveLength(500);
  });
});

test('where three lines meet, each cell is an outline of its own, and the points are told', () => {
  const wall = piece(10, 0, 10, 10);
  const rooms = [piece(10, 0, 0, 0, 0, 10, 10, 10), piece(10, 0, 18, 0, 18, 10, 10, 10)];
  const { rings, open, branches } = joinChains([wall, ...rooms], 0.05);
  expect(rings.map(({ coords }) => ringArea(coords)).sort((a, b) => a - b)).toEqual([80, 100]);
  expect(open).toEqual([]);
  expect([...branches].sort((a, b) => a[1] - b[1])).toEqual([
    [10, 0],
    [10, 10],
  ]);
});

describe('doubles', () => {
  test('curves between the same ends are doubles only if they go the same way', () => {
    const upper = piece(0, 0, 5, 3, 10, 0);
    const lower = piece(10, 0, 5, -3, 0, 0);
    const again = piece(10, 0, 5, 3, 0, 0);
    const { rings, doubled } = joinChains([upper, lower, again], 0.05);
    expect(doubled).toEqual([{ atMm: [5, 3], piece: 2 }]);
    expect(rings.map(({ coords }) => Math.abs(ringArea(coords)))).toEqual([30]);
  });

  test('copies of one line by the hundred thousand count once, in about as much time as they take to be listed', () => {
    const bent = piece(0, 0, 10, 4, 20, 0);
    const { open, doubled } = joinChains(
      Array.from({ length: 200_000 }, () => bent),
      0.05,
    );
    expect(open).toHaveLength(1);
    expect(doubled).toHaveLength(199_999);
  });

  test('lines that only touch end to end are none', () => {
    const lines = [piece(0, 0, 5, 0), piece(5, 0, 10, 0), piece(10, 0, 5, 8), piece(5, 8, 0, 0)];
    const { rings, doubled } = joinChains(lines, 0.05);
    expect(doubled).toEqual([]);
    expect(rings).toHaveLength(1);
  });

  test('collinear lines in any direction and far from each other stay as they are', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 7, noNaN: true }), (angle) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const on = (t: number, h: number): [number, number] => [c * t - s * h, s * t + c * h];
        const square = (t: number) => [
          piece(...on(t, 0), ...on(t + 5, 0)),
          piece(...on(t + 5, 0), ...on(t + 5, 5)),
          piece(...on(t + 5, 5), ...on(t, 5)),
          piece(...on(t, 5), ...on(t, 0)),
        ];
        const { rings, doubled, open } = joinChains([...square(0), ...square(20), ...square(-400)], 0.05);
        expect(doubled).toEqual([]);
        expect(open).toEqual([]);
        expect(rings).toHaveLength(3);
      }),
    );
  });
});
