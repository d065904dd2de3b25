import type { AxisEdge } from '@pourproof/geometry';

/** `[minX,minY,maxX,maxY]` of a box around the loaded edge, widened by the sagitta of its arc. */
export function axisEdgeBox(edge: AxisEdge): [number, number, number, number] {
  edge.atShare(0.5);
  const sag = Math.hypot(edge.x - (edge.x0 + edge.x1) / 2, edge.y - (edge.y0 + edge.y1) / 2);
  return [
    Math.min(edge.x0, edge.x1) - sag,
    Math.min(edge.y0, edge.y1) - sag,
    Math.max(edge.x0, edge.x1) + sag,
    Math.max(edge.y0, edge.y1) + sag,
  ];
}
