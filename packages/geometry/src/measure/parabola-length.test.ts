import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parabolaArc, parabolaLength, parabolaSweep } from './parabola-length.ts';

/** Nodes and weights of Gauss' rule of five points, over −1 … 1 (Abramowitz and Stegun, table 25.4). */
const NODES = [0, 0.538469310105683, -0.538469310105683, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [
  0.568888888888889, 0.478628670499366, 0.478628670499366, 0.236926885056189, 0.236926885056189,
];

/**
 * Length of y = x²/(2h) between two places by that rule on equal pieces, short against the way to the focus.
 */
function summed(h: number, s: number, t: number, power = 1): number {
  const pieces = Math.ceil((20 * (t - s)) / h);
  const half = (t - s) / (2 * pieces);
  let sum = 0;
  for (let k = 0; k < pieces; k++) {
    for (let i = 0; i < NODES.length; i++) {
      const u = (s + half * (2 * k + 1 + NODES[i]!)) / h;
      sum += half * WEIGHTS[i]! * Math.sqrt(1 + u * u) ** power;
    }
  }
  return sum;
}

test('lengths of arcs long and short are exact to rounding', () => {
  const logarithm = fc.double({ min: -6, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: -4, max: 4, noNaN: true }), logarithm, logarithm, (middle, wide, scale) => {
      const h = 10 ** scale;
      const s = h * middle;
      const t = s + h * 10 ** wide;
      // the table has 15 digits; short of the series the closed form loses two
      expect(Math.abs(parabolaArc(h, s, t) / summed(h, s, t) - 1)).toBeLessThan(1e-13);
      // clearance by length is h/2·√(1 + u²)³ by position
      expect(parabolaSweep(h, s, t) / ((h / 2) * summed(h, s, t, 3))).toBeCloseTo(1, 12);
      expect(parabolaArc(h, t, s)).toBeCloseTo(-parabolaArc(h, s, t), 12);
      expect(parabolaArc(-h, s, t)).toBeCloseTo(parabolaArc(h, s, t), 12);
    }),
  );
});

test('from the vertex on the closed form holds', () => {
  for (const t of [1e-9, 0.01, 0.06, 0.07, 1, 50]) {
    expect(parabolaArc(2, 0, 2 * t) / parabolaLength(t)).toBeCloseTo(1, 14);
  }
});
