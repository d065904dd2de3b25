import { BOX_STRIDE, type ObbTree, SIDES_STRIDE } from './obb-tree-layout.ts';

/**
 * A box around the windows of all vertices of one leaf, along the leaf's own direction: one descent of the
 * tree serves all of them.
 */
export class GroupBox {
  readonly #tree: ObbTree;
  readonly #boxes: Float64Array;
  /** As in the tree: centre, unit direction of one side, half extents along it and across it. */
  readonly #box = new Float64Array(BOX_STRIDE);

  constructor(tree: ObbTree) {
    this.#tree = tree;
    this.#boxes = tree.boxes;
  }

  /** Unit direction of one side. */
  get ux(): number {
    return this.#box[2];
  }

  get uy(): number {
    return this.#box[3];
  }

  /** Turns the box to the direction of a node's box. */
  turnTo(node: number): void {
    this.#box[2] = this.#boxes[node * BOX_STRIDE + 2];
    this.#box[3] = this.#boxes[node * BOX_STRIDE + 3];
  }

  /**
   * Sets the extents along the direction and across it, a quarter turn from +x towards +y on, plus `slack` on
   * all sides.
   */
  take(minU: number, maxU: number, minV: number, maxV: number, slack: number): void {
    const box = this.#box;
    const u = (minU + maxU) / 2;
    const v = (minV + maxV) / 2;
    box[0] = u * box[2] - v * box[3];
    box[1] = u * box[3] + v * box[2];
    box[4] = (maxU - minU) / 2 + slack;
    box[5] = (maxV - minV) / 2 + slack;
  }

  /** Whether the box of a node may meet this box. */
  sees(node: number): boolean {
    return this.#towards(node) >= 0;
  }

  /**
   * Pushes the children of a node that this box may meet, the one nearer to its centre on top; the new size
   * of the stack.
   */
  pushSeen(node: number, stack: Int32Array, size: number): number {
    const left = 2 * node;
    const toLeft = this.#towards(left);
    const toRight = this.#towards(left + 1);
    const near = toLeft < toRight ? left : left + 1;
    if (toLeft >= 0 && toRight >= 0) {
      stack[size] = near ^ 1;
      stack[size + 1] = near;
      return size + 2;
    }
    if (toLeft >= 0 || toRight >= 0) {
      stack[size] = toLeft >= 0 ? left : left + 1;
      return size + 1;
    }
    return size;
  }

  /** Squared distance of the middles, or -1 where this box cannot meet a node. */
  #towards(node: number): number {
    const distance2 = separation(this.#boxes, node * BOX_STRIDE, this.#box);
    return distance2 >= 0 && this.#tree.isSlanted[node] !== 0 && this.#isBeyondSide(node) ? -1 : distance2;
  }

  /** Whether this box lies beyond one of the slanted sides of a node. */
  #isBeyondSide(node: number): boolean {
    const { sides } = this.#tree;
    const box = this.#box;
    for (let at = node * SIDES_STRIDE; at < (node + 1) * SIDES_STRIDE; at += 3) {
      const nx = sides[at];
      const ny = sides[at + 1];
      const half =
        Math.abs(nx * box[2] + ny * box[3]) * box[4] + Math.abs(ny * box[2] - nx * box[3]) * box[5];
      if (nx * box[0] + ny * box[1] - half > sides[at + 2]) {
        return true;
      }
    }
    return false;
  }

  /** Whether the segment from p to p + length · e lies beyond one side of this box. */
  isBeyond(px: number, py: number, ex: number, ey: number, length: number): boolean {
    const box = this.#box;
    const ux = box[2];
    const uy = box[3];
    const dx = px - box[0];
    const dy = py - box[1];
    const u = dx * ux + dy * uy;
    const v = dy * ux - dx * uy;
    const endU = u + length * (ex * ux + ey * uy);
    const endV = v + length * (ey * ux - ex * uy);
    const halfU = box[4];
    const halfV = box[5];
    return (
      (u > halfU && endU > halfU) ||
      (u < -halfU && endU < -halfU) ||
      (v > halfV && endV > halfV) ||
      (v < -halfV && endV < -halfV)
    );
  }
}

/**
 * Squared distance of the centres of a node's box and another box, or -1 where the node has no edges or a
 * separating axis keeps them apart.
 */
function separation(boxes: Float64Array, at: number, box: Float64Array): number {
  const dx = boxes[at] - box[0];
  const dy = boxes[at + 1] - box[1];
  const ux = boxes[at + 2];
  const uy = boxes[at + 3];
  const halfU = boxes[at + 4];
  const halfV = boxes[at + 5];
  const gx = box[2];
  const gy = box[3];
  const groupU = box[4];
  const groupV = box[5];
  const c = Math.abs(gx * ux + gy * uy);
  const s = Math.abs(gx * uy - gy * ux);
  return halfU >= 0 &&
    Math.abs(dx * gx + dy * gy) <= groupU + halfU * c + halfV * s &&
    Math.abs(dy * gx - dx * gy) <= groupV + halfU * s + halfV * c &&
    Math.abs(dx * ux + dy * uy) <= halfU + groupU * c + groupV * s &&
    Math.abs(dy * ux - dx * uy) <= halfV + groupU * s + groupV * c
    ? dx * dx + dy * dy
    : -1;
}
