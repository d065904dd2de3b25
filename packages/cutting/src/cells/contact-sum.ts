import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { type ContactIntegrand, EdgeCells } from './edge-cells.ts';

/**
 * Integral over all contacts with at least a clearance, with an integrand for each axis edge.
 *
 * @param tolerance tolerance of all integrals together, in the unit of the sum
 */
export function contactSum(
  axis: MedialAxis,
  minMm: number,
  tolerance: number,
  integrandOf: (edge: number) => ContactIntegrand,
): number {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const cells = new EdgeCells(axis, edge);
  const ofEach = tolerance / Math.max(1, edgeFrom.length);
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const high = nodeR[edgeTo[e]];
    if (high >= minMm && !edge.isSecondary(e)) {
      edge.load(e);
      sum += cells.integral(Math.max(edge.r0, minMm), high, integrandOf(e), ofEach);
    }
  }
  return sum;
}
