import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { parabolaArc } from './parabola-length.ts';

/** Length of each axis edge, mm; -1 for spokes. */
export function edgeLengths(axis: MedialAxis): Float64Array {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY } = axis;
  const { count, x, y, tx, ty, next } = axis.boundary;
  const lengths = new Float64Array(edgeFrom.length);
  for (let e = 0; e < lengths.length; e++) {
    const from = edgeFrom[e];
    const to = edgeTo[e];
    const left = edgeLeft[e];
    const right = edgeRight[e];
    const vx = nodeX[to] - nodeX[from];
    const vy = nodeY[to] - nodeY[from];
    if (left < count === right < count) {
      lengths[e] = Math.sqrt(vx * vx + vy * vy);
      continue;
    }
    const line = Math.min(left, right);
    const p = Math.max(left, right) - count;
    if (p === line || p === next[line]) {
      lengths[e] = -1;
      continue;
    }
    const h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
    const s = ((nodeX[from] - x[p]) * tx[line] + (nodeY[from] - y[p]) * ty[line]) / h;
    const t = s + (vx * tx[line] + vy * ty[line]) / h;
    lengths[e] = h * Math.abs(parabolaArc(s, t));
  }
  return lengths;
}
