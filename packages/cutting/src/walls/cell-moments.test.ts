import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import type { VertexCell } from '../cells/edge-cells.ts';
import { adaptiveIntegral } from '../integrals/adaptive-integral.ts';
import { cellMoments, zerosBetween } from './cell-moments.ts';

const cellOf = (isBesideWall: boolean, h: number): VertexCell => ({
  site: 0,
  from: 0,
  to: 1,
  sign: 1,
  isBesideWall,
  h,
  clearanceAt: (t) => (isBesideWall ? h / (1 + Math.cos(t)) : h / Math.cos(t)),
  directionAt: (t) => [Math.cos(t), Math.sin(t)],
});

describe.each([
  ['a wall', true, 2.6],
  ['a vertex', false, 1.4],
] as const)('moments of contacts with a vertex beside %s', (_, isBesideWall, most) => {
  test('are the integrals that they stand for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: -most, max: most, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (h, from, share) => {
          const cell = cellOf(isBesideWall, h);
          const to = from + share * (most - from);
          const { plain, cosine, sine } = cellMoments(cell, from, to);
          const of = [(): number => 1, Math.cos, Math.sin];
          [plain, cosine, sine].forEach((moments, turn) => {
            moments.forEach((moment, power) => {
              const f = (t: number): number => cell.clearanceAt(t) ** power * (of[turn]?.(t) ?? 0);
              const size = Math.max(1, cell.clearanceAt(most) ** power);
              const { value } = adaptiveIntegral(f, from, to, 1e-11 * size);
              expect(Math.abs(moment - value)).toBeLessThan(1e-10 * size);
            });
          });
        },
      ),
      cases(40),
    );
  });
});

test('the angles at which a surface runs along the fibre are all found, and nothing else', () => {
  const part = fc.double({ min: -1, max: 1, noNaN: true });
  const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
  fc.assert(
    fc.property(part, part, part, angle, angle, (p, q, r, one, other) => {
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      const f = (t: number): number => p * Math.cos(t) + q * Math.sin(t) + r;
      const zeros = zerosBetween(p, q, r, low, high);
      for (const zero of zeros) {
        expect(Math.abs(f(zero))).toBeLessThan(1e-7);
        expect(zero > low && zero < high).toBe(true);
      }
      // between two of them, and before the first and after the last, the sign stays
      const stops = [low, ...zeros, high];
      for (let k = 0; k + 1 < stops.length; k++) {
        const [a, b] = [stops[k] as number, stops[k + 1] as number];
        const signs = [0.1, 0.3, 0.5, 0.7, 0.9].map((s) => f(a + s * (b - a)));
        const isClear = signs.filter((value) => Math.abs(value) > 1e-7).map(Math.sign);
        expect(new Set(isClear).size).toBeLessThanOrEqual(1);
      }
    }),
    cases(200),
  );
});
