import type { Boundary } from './boundary.ts';
import { nodeDistance2 } from './box-distance.ts';
import type { ObbTree } from './obb-tree-layout.ts';

/** Boxes that are looked at for one disc, per level of the tree (our choice). */
const BOXES_A_LEVEL = 4;
/** Points that are kept. */
const KEPT = 4;

/** Looks for points of the boundary inside discs. */
export class DiscIntruder {
  readonly #boundary: Boundary;
  readonly #tree: ObbTree;
  readonly #stack = new Int32Array(128);
  readonly #boxes: number;
  /** The point that was found, and its edge. */
  x = 0;
  y = 0;
  edge = -1;
  /** Points that were kept last: their edges, and x and y. */
  readonly keptEdges: Int32Array = new Int32Array(KEPT).fill(-1);
  readonly kept: Float64Array = new Float64Array(2 * KEPT);
  #keptCount = 0;

  /** @param boxesALevel boxes that are looked at for one disc, per level of the tree */
  constructor(boundary: Boundary, tree: ObbTree, boxesALevel: number = BOXES_A_LEVEL) {
    this.#boundary = boundary;
    this.#tree = tree;
    this.#boxes = boxesALevel * Math.log2(2 * tree.leafStart);
  }

  /** Keeps the point found for those who look next. */
  keep(): void {
    const at = this.#keptCount++ % KEPT;
    this.keptEdges[at] = this.edge;
    this.kept[2 * at] = this.x;
    this.kept[2 * at + 1] = this.y;
  }

  /**
   * Finds a point of the boundary nearer to m than √radius2, the one nearest to m among the first run that has any; edges of vertex v do not
   * count. Whether there is one, as far as the boxes go.
   */
  find(mx: number, my: number, radius2: number, v: number): boolean {
    const { leafStart } = this.#tree;
    const stack = this.#stack;
    let size = 0;
    stack[size++] = 1;
    for (let left = this.#boxes; size > 0 && left > 0; left -= 2) {
      const node = stack[--size];
      if (node >= leafStart) {
        if (this.#findIn(node, mx, my, radius2, v)) {
          return true;
        }
        continue;
      }
      const a = nodeDistance2(this.#tree, 2 * node, mx, my);
      const b = nodeDistance2(this.#tree, 2 * node + 1, mx, my);
      const near = a < b ? 2 * node : 2 * node + 1;
      if (Math.max(a, b) < radius2) {
        stack[size++] = near ^ 1;
      }
      if (Math.min(a, b) < radius2) {
        stack[size++] = near;
      }
    }
    return false;
  }

  #findIn(leaf: number, mx: number, my: number, radius2: number, v: number): boolean {
    const { x, y, tx, ty, length, previous } = this.#boundary;
    const { leafFrom, leafTo, leafStart } = this.#tree;
    let best = radius2;
    for (let e = leafFrom[leaf - leafStart]; e < leafTo[leaf - leafStart]; e++) {
      if (e !== v && e !== previous[v]) {
        const ax = x[e] - mx;
        const ay = y[e] - my;
        const s = Math.min(Math.max(-(ax * tx[e] + ay * ty[e]), 0), length[e]);
        const dx = ax + s * tx[e];
        const dy = ay + s * ty[e];
        if (dx * dx + dy * dy < best) {
          best = dx * dx + dy * dy;
          this.edge = e;
          this.x = x[e] + s * tx[e];
          this.y = y[e] + s * ty[e];
        }
      }
    }
    return best < radius2;
  }
}
