import type { Boundary } from './boundary.ts';
import { BOX_STRIDE, type ObbTree, SIDES_STRIDE } from './obb-tree-layout.ts';

/** Edges as long as this share of their node's box may lie along a slanted side. */
const LONG_EDGE_SHARE = 0.4;

/** Of fewer runs than these only the edge whose middle lies farthest out is tried (our choice). */
const FEW_RUNS = 4;

/** A slanted side is worth a test where its middle is nearer to the middle of the box by this share at least. */
const WORTH_SHARE = 0.8;

/** Gives nodes of a tree slanted sides along the outermost long edges of what they hold, where these fit closer. */
export class SlantedSides {
  readonly #boundary: Boundary;
  readonly #tree: ObbTree;
  readonly #order: Int32Array;
  readonly #outermost = new Int32Array(3);
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
    const at = node * BOX_STRIDE;
    for (let sign = 1; sign >= -1; sign -= 2) {
      const side = node * SIDES_STRIDE + (sign > 0 ? 0 : 3);
      this.#findOutermost(low, high, boxes[at + 2], boxes[at + 3], sign, LONG_EDGE_SHARE * 2 * boxes[at + 4]);
      let height = Infinity;
      sides[side + 2] = Infinity;
      const outermost = this.#outermost;
      const tries = high - low < FEW_RUNS ? 1 : outermost.length;
      for (let k = 0; k < tries; k++) {
        const e = outermost[k];
        if (e >= 0 && outermost.indexOf(e) === k) {
          height = this.#tryEdge(node, side, sign, e, low, high, height);
        }
      }
      if (height < WORTH_SHARE * boxes[at + 5]) {
        isSlanted[node] = 1;
      }
    }
  }

  /** Lays a side along edge e where it is lower over the middle of the box than so far; how low it is then. */
  #tryEdge(
    node: number,
    side: number,
    sign: number,
    e: number,
    low: number,
    high: number,
    lowest: number,
  ): number {
    const { boxes, sides } = this.#tree;
    const { tx, ty } = this.#boundary;
    const at = node * BOX_STRIDE;
    const ux = boxes[at + 2];
    const uy = boxes[at + 3];
    const flip = ux * tx[e] + uy * ty[e] < 0 ? -sign : sign;
    const nx = -ty[e] * flip;
    const ny = tx[e] * flip;
    const limit = this.#limit(low, high, nx, ny);
    const height = (limit - (boxes[at] * nx + boxes[at + 1] * ny)) / (sign * (ny * ux - nx * uy));
    if (height >= lowest) {
      return lowest;
    }
    sides[side] = nx;
    sides[side + 1] = ny;
    sides[side + 2] = limit;
    return height;
  }

  /**
   * Finds three of the edges longer than `least` that may be the outermost on one side of direction u: the one whose middle lies farthest
   * out, and those that lead out most and least along u. Of spikes of any length that run together at one end the last in the row leads
   * out most, or least, and the middle of another may lie farther out because it is longer. -1 for none.
   */
  #findOutermost(low: number, high: number, ux: number, uy: number, sign: number, least: number): void {
    const { x, y, tx, ty, length } = this.#boundary;
    const { from, to } = this.#tree.runs;
    const dx = -uy * sign;
    const dy = ux * sign;
    let farthest = -Infinity;
    let most = -Infinity;
    let fewest = Infinity;
    const outermost = this.#outermost.fill(-1);
    for (let k = low; k < high; k++) {
      const r = this.#order[k];
      for (let e = from[r]; e < to[r] && this.#longest[r] > least; e++) {
        if (length[e] > least) {
          const far = (x[e] + (tx[e] * length[e]) / 2) * dx + (y[e] + (ty[e] * length[e]) / 2) * dy;
          const slope = (tx[e] * dx + ty[e] * dy) / (tx[e] * ux + ty[e] * uy);
          if (far > farthest) {
            farthest = far;
            outermost[0] = e;
          }
          if (slope > most) {
            most = slope;
            outermost[1] = e;
          }
          if (slope < fewest) {
            fewest = slope;
            outermost[2] = e;
          }
        }
      }
    }
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
