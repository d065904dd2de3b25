import { BOX_STRIDE } from './obb-tree-layout.ts';

/** Squared distance of a point from the box of a node of a tree, infinity where that has no edges, mm². */
export function boxDistance2(boxes: Float64Array, node: number, x: number, y: number): number {
  const at = node * BOX_STRIDE;
  const halfU = boxes[at + 4];
  if (halfU < 0) {
    return Infinity;
  }
  const dx = x - boxes[at];
  const dy = y - boxes[at + 1];
  const ux = boxes[at + 2];
  const uy = boxes[at + 3];
  const u = Math.abs(dx * ux + dy * uy) - halfU;
  const v = Math.abs(dy * ux - dx * uy) - boxes[at + 5];
  return (u > 0 ? u * u : 0) + (v > 0 ? v * v : 0);
}
