import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { NearCentres } from './near-centres.ts';
import { neighbouringDiscs } from './neighbouring-discs.ts';

/** Centres anywhere, on one line or one circle, or on a grid, some of them twice. */
const centres = fc
  .tuple(fc.constantFrom('any', 'line', 'circle', 'grid'), fc.integer({ min: 1, max: 60 }), fc.integer())
  .map(([kind, count, seed]) => {
    const random = seeded(seed);
    return Array.from({ length: count }, (_, k): [number, number] => {
      const turn = (2 * Math.PI * k) / count;
      return kind === 'any'
        ? [random(), random()]
        : kind === 'line'
          ? [random(), 0.3]
          : kind === 'circle'
            ? [Math.cos(turn), Math.sin(turn)]
            : [Math.floor(8 * random()) / 8, Math.floor(8 * random()) / 8];
    });
  });

function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const xs = (list: [number, number][]): number[] => list.map(([x]) => x);
const ys = (list: [number, number][]): number[] => list.map(([, y]) => y);

test('no centre is nearer than the one that is found', () => {
  fc.assert(
    fc.property(centres, fc.integer(), (list, seed) => {
      const near = new NearCentres(xs(list), ys(list));
      const random = seeded(seed);
      for (let k = 0; k < 8; k++) {
        const [px, py] = [4 * random() - 2, 4 * random() - 2];
        const least = Math.min(...list.map(([x, y]) => Math.hypot(px - x, py - y)));
        expect(near.distance(near.nearest(px, py), px, py)).toBeCloseTo(least, 12);
      }
    }),
    cases(100),
  );
});

test('what any disc covers of a rim, its neighbours cover', () => {
  fc.assert(
    fc.property(centres, fc.double({ min: 0.05, max: 2, noNaN: true }), (list, radius) => {
      const neighbours = neighbouringDiscs(xs(list), ys(list));
      for (const [k, [x, y]] of list.entries()) {
        for (let turn = 0; turn < 6; turn += 0.9) {
          const [px, py] = [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
          const reach = (l: number): number => radius - Math.hypot(px - list[l][0], py - list[l][1]);
          const deepest = Math.max(...list.map((_, l) => (l === k ? -Infinity : reach(l))));
          if (deepest > 1e-9) {
            expect(Math.max(...neighbours[k].map(reach))).toBeGreaterThan(0);
          }
        }
      }
    }),
    cases(30),
  );
});
