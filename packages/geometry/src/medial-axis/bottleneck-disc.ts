import type { Boundary } from './boundary.ts';
import { nodeDistance2 } from './box-distance.ts';
import { BOX_STRIDE, type ObbTree } from './obb-tree-layout.ts';
import { EMPTY_DISC_REL_TOL, ROUNDING_REL_TOL, SAME_CONTACT_REL_TOL } from './tolerances.ts';

/**
 * Ends of a diameter nearer than this share of the rounding error of a distance are one point: distinct
 * points are never so near.
 */
const SAME_POINT_SHARE = 1e-3;

/**
 * Tests whether discs are bottlenecks; remembers the edge that refused the last one, which often refuses the
 * next.
 */
export class BottleneckDisc {
  readonly #boundary: Boundary;
  readonly #boxes: Float64Array;
  readonly #tree: ObbTree;
  readonly #leafStart: number;
  /** Rounding error of a distance between points of the boundary, mm. */
  readonly #rounding: number;
  readonly #stack = new Int32Array(128);
  #later: number[] = [];
  #lastViolator = -1;
  #mx = 0;
  #my = 0;
  #ux = 0;
  #uy = 0;
  #radius = 0;
  #inner2 = 0;
  #outer2 = 0;
  /** Sides of the diameter with a contact, one bit each. */
  #sides = 0;

  constructor(boundary: Boundary, tree: ObbTree) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#tree = tree;
    this.#leafStart = tree.leafStart;
    this.#rounding = ROUNDING_REL_TOL * boundary.extent;
  }

  /**
   * Whether the disc around m is empty and does not touch boundary on both sides of its diameter along u:
   * with contacts all around, the clearance has a maximum there, not a minimum. One end of the diameter
   * lies in leaf `own`; the edges near it are tested first.
   */
  isBottleneck(own: number, mx: number, my: number, ux: number, uy: number, radius: number): boolean {
    if (radius <= SAME_POINT_SHARE * this.#rounding) {
      // one point, where two parts of the region touch
      return false;
    }
    const inner = Math.max(0, radius * (1 - EMPTY_DISC_REL_TOL) - this.#rounding);
    const outer = radius * (1 + EMPTY_DISC_REL_TOL) + this.#rounding;
    this.#mx = mx;
    this.#my = my;
    this.#ux = ux;
    this.#uy = uy;
    this.#radius = radius;
    this.#inner2 = inner * inner;
    this.#outer2 = outer * outer;
    this.#sides = 0;
    if (this.#lastViolator >= 0 && !this.#isClear(this.#lastViolator)) {
      return false;
    }
    this.#sides = 0;
    this.#later.length = 0;
    if (!this.#isClearBelow(own, true)) {
      return false;
    }
    for (let below = own; below > 1; below >>= 1) {
      if (this.#distance2(below ^ 1) < this.#outer2 && !this.#isClearBelow(below ^ 1, true)) {
        return false;
      }
    }
    for (let k = this.#later.length - 1; k >= 0; k--) {
      if (!this.#isClearBelow(this.#later[k], false)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Whether no edge below a node refuses the disc, nearest first. Runs on a side that has a contact can wait:
   * where a great many points lie on one circle, the first contact on the other side decides.
   */
  #isClearBelow(root: number, canWait: boolean): boolean {
    const stack = this.#stack;
    let size = 0;
    stack[size++] = root;
    while (size > 0) {
      const node = stack[--size];
      if (canWait && this.#sides !== 0 && this.#liesOnSide(node, this.#sides)) {
        this.#later.push(node);
      } else if (node >= this.#leafStart) {
        const to = this.#tree.leafTo[node - this.#leafStart];
        for (let e = this.#tree.leafFrom[node - this.#leafStart]; e < to; e++) {
          if (!this.#isClear(e)) {
            return false;
          }
        }
      } else {
        const a = this.#distance2(2 * node);
        const b = this.#distance2(2 * node + 1);
        const near = a < b ? 2 * node : 2 * node + 1;
        if (Math.max(a, b) < this.#outer2) {
          stack[size++] = near ^ 1;
        }
        if (Math.min(a, b) < this.#outer2) {
          stack[size++] = near;
        }
      }
    }
    return true;
  }

  /** Whether edge e neither enters the disc nor gives it contacts on both sides. */
  #isClear(e: number): boolean {
    const { x, y, tx, ty, length } = this.#boundary;
    const ax = x[e] - this.#mx;
    const ay = y[e] - this.#my;
    const along = -(ax * tx[e] + ay * ty[e]);
    const s = Math.min(Math.max(along, 0), length[e]);
    const dx = ax + s * tx[e];
    const dy = ay + s * ty[e];
    const d2 = dx * dx + dy * dy;
    if (d2 < this.#inner2) {
      this.#lastViolator = e;
      return false;
    }
    if (d2 < this.#outer2) {
      const side = this.#ux * dy - this.#uy * dx;
      const ends = SAME_CONTACT_REL_TOL * this.#radius;
      this.#sides |= side > ends ? 1 : side < -ends ? 2 : 0;
    }
    return this.#sides !== 3;
  }

  /** Squared distance of the centre from a node, infinity where that has no edges. */
  #distance2(node: number): number {
    return nodeDistance2(this.#tree, node, this.#mx, this.#my);
  }

  /** Whether the box of a node lies wholly on side 1 or 2 of the diameter. */
  #liesOnSide(node: number, sides: number): boolean {
    const boxes = this.#boxes;
    const at = node * BOX_STRIDE;
    const ux = this.#ux;
    const uy = this.#uy;
    const side = ux * (boxes[at + 1] - this.#my) - uy * (boxes[at] - this.#mx);
    const along = ux * boxes[at + 2] + uy * boxes[at + 3];
    const across = ux * boxes[at + 3] - uy * boxes[at + 2];
    const half = Math.abs(across) * boxes[at + 4] + Math.abs(along) * boxes[at + 5];
    return sides === 1 ? side > half : -side > half;
  }
}
