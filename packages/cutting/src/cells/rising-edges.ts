import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';

/** For each node, the axis edge that rises from it, the highest where rounding left several; -1 at a top. */
export function risingEdges(axis: MedialAxis): Int32Array {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const rising = new Int32Array(nodeR.length).fill(-1);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const before = rising[edgeFrom[e]];
    if (!edge.isSecondary(e) && (before < 0 || nodeR[edgeTo[e]] > nodeR[edgeTo[before]])) {
      rising[edgeFrom[e]] = e;
    }
  }
  return rising;
}
