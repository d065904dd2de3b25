import { AxisEdge, medialAxis } from '@pourproof/geometry';
import { expect, test } from 'vitest';
import { cleanFrom } from '../../../../tests/support/shapes/clean-from.ts';
import { risingEdges } from './rising-edges.ts';

test('of the edges that rise from a node the one that rises highest is taken, and none at a top', () => {
  // two rooms of unlike size beside a waist, from which the axis rises into both
  const axis = medialAxis(cleanFrom([[0, 0, 6, 4, 16, 0, 16, 12, 6, 6, 0, 9]]));
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const rising = risingEdges(axis);
  let both = 0;
  for (const [v, e] of rising.entries()) {
    const all = Array.from(edgeFrom, (_, k) => k).filter((k) => edgeFrom[k] === v && !edge.isSecondary(k));
    const highest = Math.max(...all.map((k) => nodeR[edgeTo[k]!]!));
    expect(e < 0 ? [] : [edgeFrom[e], nodeR[edgeTo[e]!]]).toEqual(all.length === 0 ? [] : [v, highest]);
    both += new Set(all.map((k) => nodeR[edgeTo[k]!])).size > 1 ? 1 : 0;
  }
  expect(axis.bottleneckCount).toBeGreaterThan(0);
  expect(both).toBeGreaterThan(0);
});
