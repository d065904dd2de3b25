import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { axisEdgeBox } from './axis-edge-box.ts';
import { NearIndex } from './near-index.ts';

/**
 * For each axis edge a clearance, mm, that no disc in the artwork exceeds which covers a point of its two cells. Near O(n log n) where clearances change
 * slowly, as along strokes.
 */
export function localWidest(axis: MedialAxis): Float64Array {
  const edge = new AxisEdge(axis);
  const edges: number[] = [];
  const boxes: number[] = [];
  const highest: number[] = [];
  for (let e = 0; e < axis.edgeFrom.length; e++) {
    if (!edge.isSpoke(e)) {
      edge.load(e);
      edges.push(e);
      boxes.push(...axisEdgeBox(edge));
      highest.push(edge.r1);
    }
  }
  const all = Float64Array.from(boxes);
  const index = new NearIndex(all, Float64Array.from(highest));
  const widest = new Float64Array(axis.edgeFrom.length);
  edges.forEach((e, item) => {
    const [minX, minY, maxX, maxY] = all.subarray(4 * item, 4 * item + 4);
    // all points of the cells lie this near to the middle of the edge's box
    const around = Math.hypot(maxX - minX, maxY - minY) / 2 + highest[item];
    let best = highest[item];
    index.visit(
      (minX + maxX) / 2,
      (minY + maxY) / 2,
      (distance, most) => most > best && distance <= around + most,
      (other) => {
        best = Math.max(best, highest[other]);
      },
    );
    widest[e] = best;
  });
  return widest;
}
