import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { risingEdges } from '../cells/rising-edges.ts';

/** Share of the clearance gained that a climb may lose: corners sharper than 164° are none between chords. */
const LOSS_SHARE = 0.01;

/**
 * For each axis edge the clearance at the top of a climb from its low end along the rising axis, as far as the clearance rises nearly as fast as the way:
 * by at most `lossMm` and a hundredth less. The disc there all but holds those below, so that corners between chords of a flattened curve
 * count as what they stand for. 0 for edges whose own loss is more.
 */
export function climbedClearance(axis: MedialAxis, lossMm: number): Float64Array {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const loss = new Float64Array(edgeFrom.length);
  const rising = risingEdges(axis);
  for (let e = 0; e < edgeFrom.length; e++) {
    if (edge.isSecondary(e)) {
      continue;
    }
    edge.load(e);
    loss[e] = Math.max(0, edge.length(edge.r0, edge.r1) - (edge.r1 - edge.r0));
  }
  const top = new Float64Array(edgeFrom.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    let lost = loss[e];
    let at = e;
    while (lost <= Math.min(lossMm, LOSS_SHARE * (nodeR[edgeTo[at]] - nodeR[edgeFrom[e]]))) {
      top[e] = nodeR[edgeTo[at]];
      const next = rising[edgeTo[at]];
      if (next < 0) {
        break;
      }
      at = next;
      lost += loss[at];
    }
  }
  return top;
}
