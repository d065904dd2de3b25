import fc from 'fast-check';
import { expect, test } from 'vitest';
import { starRing } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { cleanFrom } from '../../../../tests/support/shapes/clean-from.ts';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { beyondCorners, excessBeyondCorner } from './beyond-corners.ts';
import { cornerShare } from './corner-share.ts';

test('where a path leaves its corner it reaches just as far beyond it as a corner does, on straight and on curved edges', () => {
  const within = { segments: 0, 'segment-vertex': 0, vertices: 0, secondary: 0 };
  fc.assert(
    fc.property(starRing([10, 20], [4, 12]), (ring) => {
      const axis = medialAxis(cleanFrom([ring]));
      const { beginning, reach } = beyondCorners(axis);
      const edge = new AxisEdge(axis);
      for (const e of beginning) {
        edge.load(e);
        const before = reach[axis.edgeFrom[e]!]!;
        const share = cornerShare(edge, before);
        edge.atShare(share);
        const excess = excessBeyondCorner(before + edge.lengthBetween(0, share), edge.clearance);
        expect(Math.abs(excess)).toBeLessThanOrEqual(1e-9 * edge.clearance);
        within[edge.kind] += share > 1e-6 && share < 1 - 1e-6 ? 1 : 0;
      }
    }),
    cases(100),
  );
  expect(within['segment-vertex']).toBeGreaterThan(3);
});
