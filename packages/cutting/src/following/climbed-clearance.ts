import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { risingEdges } from '../cells/rising-edges.ts';

/**
 * What a climb may lose, as a share of the clearance it gains: corners wider than 164° come from chords of
 * curves, not from the drawing (our choice).
 */
const CLIMB_LOSS_SHARE = 0.01;

/**
 * For each axis edge, the clearance at the top of a climb from its low end up the axis, which goes on while
 * the clearance rises nearly as fast as the distance: it lags by at most `lossMm` and by a hundredth. The
 * disc at the top all but contains those below, so that corners between chords of a flattened curve count as
 * the curve. 0 for edges that lag more by themselves.
 */
export function climbedClearance(axis: MedialAxis, lossMm: number): Float64Array {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const loss = new Float64Array(edgeFrom.length);
  const rising = risingEdges(axis);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    if (edge.isSecondary(e)) {
      continue;
    }
    edge.load(e);
    loss[e] = Math.max(0, edge.length(edge.r0, edge.r1) - (edge.r1 - edge.r0));
  }
  const top = new Float64Array(edgeFrom.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    let lost = loss[e];
    let at = e;
    while (lost <= Math.min(lossMm, CLIMB_LOSS_SHARE * (nodeR[edgeTo[at]] - nodeR[edgeFrom[e]]))) {
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
