import type { Boundary } from './boundary.ts';
import { BOX_STRIDE, type ObbTree, SIDES_STRIDE } from './obb-tree-layout.ts';

/** Edges as long as this share of their node's box may lie along a slanted side. */
const LONG_EDGE_SHARE = 0.4;

/** A slanted side is worth a test where its middle is nearer to the middle of the box by this share at least. */
const WORTH_SHARE = 0.8;

/** Gives nodes of a tree slanted sides along the outermost long edges of what they hold, where these fit closer. */
export class SlantedSides {
  readonly #boundary: Boundary;
  readonly #tree: ObbTree;
  readonly #order: Int32Array;
  /** Length of the longest edge of each run, mm. */
  readonly #longest: Float64Array;

  /**
   * @param order the runs, those of each node next to each other
   */
  constructor(boundary: Boundary, tree: ObbTree, order: Int32Array) {
    this.#boundary = boundary;
    this.#tree = tree;
    this.#order = order;
    const { from, to } = tree.runs;
    this.#longest = new Float64Array(order.length);
    for (let r = 0; r < order.length; r++) {
      for (let e = from[r]; e < to[r]; e++) {
        this.#longest[r] = Math.max(this.#longest[r], boundary.length[e]);
      }
    }
  }

  /** Gives a node of the tree its sides; it has its box and holds the runs in places `low` … `high − 1`. */
  give(node: number, low: number, high: number): void {
    const { boxes, isSlanted, sides } = this.#tree;
    const { tx, ty } = this.#boundary;
    const at = node * BOX_STRIDE;
    const ux = boxes[at + 2];
    const uy = boxes[at + 3];
    for (let sign = 1; sign >= -1; sign -= 2) {
      const side = node * SIDES_STRIDE + (sign > 0 ? 0 : 3);
      const least = LONG_EDGE_SHARE * 2 * boxes[at + 4];
      const e = this.#outermostLongEdge(low, high, -uy * sign, ux * sign, least);
      if (e < 0) {
        sides[side + 2] = Infinity;
        continue;
      }
      const flip = ux * tx[e] + uy * ty[e] < 0 ? -sign : sign;
      const nx = -ty[e] * flip;
      const ny = tx[e] * flip;
      const limit = this.#limit(low, high, nx, ny);
      sides[side] = nx;
      sides[side + 1] = ny;
      sides[side + 2] = limit;
      // height of the side over the middle of the box
      const height = (limit - (boxes[at] * nx + boxes[at + 1] * ny)) / (sign * (ny * ux - nx * uy));
      if (height < WORTH_SHARE * boxes[at + 5]) {
        isSlanted[node] = 1;
      }
    }
  }

  /** Of the edges longer than `least` the one whose middle lies farthest along a direction, -1 for none. */
  #outermostLongEdge(low: number, high: number, dx: number, dy: number, least: number): number {
    const { x, y, tx, ty, length } = this.#boundary;
    const { from, to } = this.#tree.runs;
    let outermost = -1;
    let farthest = -Infinity;
    for (let k = low; k < high; k++) {
      const r = this.#order[k];
      for (let e = from[r]; e < to[r] && this.#longest[r] > least; e++) {
        if (length[e] > least) {
          const far = (x[e] + (tx[e] * length[e]) / 2) * dx + (y[e] + (ty[e] * length[e]) / 2) * dy;
          if (far > farthest) {
            farthest = far;
            outermost = e;
          }
        }
      }
    }
    return outermost;
  }

  /** How far the points of a node reach along a direction. */
  #limit(low: number, high: number, dx: number, dy: number): number {
    const { x, y, next } = this.#boundary;
    const { from, to } = this.#tree.runs;
    let limit = -Infinity;
    for (let k = low; k < high; k++) {
      const r = this.#order[k];
      const end = to[r];
      for (let i = from[r]; i <= end; i++) {
        const j = i < end ? i : next[end - 1];
        limit = Math.max(limit, x[j] * dx + y[j] * dy);
      }
    }
    return limit;
  }
}
