import { BOX_STRIDE, type ObbTree, SIDES_STRIDE } from './obb-tree-layout.ts';

/** Squared distance of a point from the box of a node of a tree, infinity where that has no edges, mm². */
function boxDistance2(boxes: Float64Array, node: number, x: number, y: number): number {
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

/**
 * Squared distance of a point from all that bounds a node of a tree, its slanted sides too, mm²; infinity where it has no edges. Beyond a
 * corner that a side cuts off it may be less than that of the two together.
 */
export function nodeDistance2(
  { boxes, isSlanted, sides }: ObbTree,
  node: number,
  x: number,
  y: number,
): number {
  let distance2 = boxDistance2(boxes, node, x, y);
  if (isSlanted[node] !== 0) {
    for (let at = node * SIDES_STRIDE; at < (node + 1) * SIDES_STRIDE; at += 3) {
      const beyond = sides[at] * x + sides[at + 1] * y - sides[at + 2];
      distance2 = beyond > 0 ? Math.max(distance2, beyond * beyond) : distance2;
    }
  }
  return distance2;
}
