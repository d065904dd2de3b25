import type { Boundary } from './boundary.ts';
import { RUN_EDGES } from './edge-runs.ts';
import type { GroupBox } from './group-box.ts';
import { hasFoot } from './has-foot.ts';
import type { ObbTree } from './obb-tree-layout.ts';
import { EMPTY_DISC_REL_TOL, NORMAL_CONE_TOL_RAD, ROUNDING_REL_TOL } from './tolerances.ts';

/** Normal cones narrower than about 30° are thin: the cosine of their angle is above this. */
const THIN_COS = 0.85;

/**
 * Numbers per cone: its vertex, the unit directions of its two sides, and how far its window reaches along
 * them.
 */
const CONE_STRIDE = 7;

/** Boxes tested for the vertices of one leaf before they are given up as seeing too far. */
const PATIENCE = 150;

/**
 * Searches for the far ends of bottlenecks at those reflex vertices of one leaf whose normal cones are thin,
 * as at nearly all points of a flattened curve. Each sees little, so one descent of the tree serves all. A
 * window is a triangle here: the cone, cut off square.
 */
export class ThinCones {
  readonly #boundary: Boundary;
  readonly #tree: ObbTree;
  readonly #leafStart: number;
  readonly #box: GroupBox;
  /** Rounding error of a distance between points of the boundary, mm. */
  readonly #rounding: number;
  readonly #vertex = new Int32Array(RUN_EDGES);
  readonly #cones = new Float64Array(RUN_EDGES * CONE_STRIDE);
  #size = 0;
  readonly #stack = new Int32Array(128);
  /** The last two edges that cut a window: likely to cut those of the next leaf too. */
  #lastCut = -1;
  #cutBefore = -1;
  #endCount = 0;
  readonly #cone: number[] = [];
  readonly #site: number[] = [];
  readonly #endX: number[] = [];
  readonly #endY: number[] = [];

  constructor(boundary: Boundary, tree: ObbTree, box: GroupBox) {
    this.#boundary = boundary;
    this.#tree = tree;
    this.#leafStart = tree.leafStart;
    this.#box = box;
    this.#rounding = ROUNDING_REL_TOL * boundary.extent;
  }

  clear(): void {
    this.#size = 0;
    this.#endCount = 0;
  }

  /** Adds reflex vertex v if its normal cone is thin; whether it is. */
  add(v: number): boolean {
    const { x, y, tx, ty, previous, extent } = this.#boundary;
    const h = previous[v];
    if (tx[h] * tx[v] + ty[h] * ty[v] < THIN_COS) {
      return false;
    }
    const cones = this.#cones;
    const at = CONE_STRIDE * this.#size;
    this.#vertex[this.#size++] = v;
    cones[at] = x[v];
    cones[at + 1] = y[v];
    cones[at + 2] = -ty[h];
    cones[at + 3] = tx[h];
    cones[at + 4] = -ty[v];
    cones[at + 5] = tx[v];
    cones[at + 6] = 4 * extent;
    return true;
  }

  /** Number of vertices added. */
  get size(): number {
    return this.#size;
  }

  vertexAt(k: number): number {
    return this.#vertex[k];
  }

  /**
   * Collects all candidates for the vertices of leaf `own`, near ones first; whether the search ended within
   * its patience.
   */
  seek(own: number): boolean {
    const box = this.#box;
    const stack = this.#stack;
    if (this.#lastCut >= 0) {
      this.#face(this.#lastCut, this.#lastCut + 1, false);
    }
    if (this.#cutBefore >= 0) {
      this.#face(this.#cutBefore, this.#cutBefore + 1, false);
    }
    this.#fitBox();
    if (!this.#isSmooth(own)) {
      this.#lookAt(own);
    }
    let patience = PATIENCE;
    for (let below = own; below > 1; below >>= 1) {
      patience--;
      let size = 0;
      if (box.sees(below ^ 1)) {
        stack[size++] = below ^ 1;
      }
      while (size > 0 && patience > 0) {
        const node = stack[--size];
        if (node >= this.#leafStart) {
          this.#lookAt(node);
        } else {
          patience -= 2;
          size = box.pushSeen(node, stack, size);
        }
      }
    }
    return patience > 0;
  }

  /**
   * Whether all points of a leaf are in the group and turn by less than 90° in all: then none sees its
   * neighbours.
   */
  #isSmooth(leaf: number): boolean {
    const { tx, ty, previous } = this.#boundary;
    const from = this.#tree.leafFrom[leaf - this.#leafStart];
    const last = this.#tree.leafTo[leaf - this.#leafStart] - 1;
    if (this.#size <= last - from) {
      return false;
    }
    const h = previous[from];
    return tx[h] * tx[last] + ty[h] * ty[last] > 0;
  }

  /** Examines the edges of a leaf, as far ends and as limits to where far ends may lie. */
  #lookAt(leaf: number): void {
    const { leafFrom, leafTo } = this.#tree;
    const cutter = this.#face(leafFrom[leaf - this.#leafStart], leafTo[leaf - this.#leafStart], true);
    if (cutter >= 0) {
      if (cutter !== this.#lastCut) {
        this.#cutBefore = this.#lastCut;
        this.#lastCut = cutter;
      }
      this.#fitBox();
    }
  }

  /**
   * Cuts from all windows what no empty disc can reach because of edges `from` … `to − 1`, and collects
   * candidates on them; the last edge that cut, or -1. Of all points q of an edge, the one that cuts the
   * middle of a cone shortest, at p·q = q·q, is where the disc through the vertex with its centre on that
   * middle touches the edge.
   */
  #face(from: number, to: number, isCollecting: boolean): number {
    const { x, y, tx, ty, length } = this.#boundary;
    const cones = this.#cones;
    const size = CONE_STRIDE * this.#size;
    const rounding = this.#rounding;
    let cutter = -1;
    for (let e = from; e < to; e++) {
      const ex = tx[e];
      const ey = ty[e];
      const end = length[e];
      if (isCollecting && this.#box.isBeyond(x[e], y[e], ex, ey, end)) {
        continue;
      }
      for (let at = 0; at < size; at += CONE_STRIDE) {
        const px = x[e] - cones[at];
        const py = y[e] - cones[at + 1];
        const ax = cones[at + 2];
        const ay = cones[at + 3];
        const bx = cones[at + 4];
        const by = cones[at + 5];
        const reach = cones[at + 6];
        const pa = px * ax + py * ay;
        const pb = px * bx + py * by;
        const ea = ex * ax + ey * ay;
        const eb = ex * bx + ey * by;
        // behind one side of the cone or beyond its reach; the vertex's own edges are in front by rounding
        // only
        if (
          (pa <= 0 && pa + end * ea <= 0) ||
          (pb <= 0 && pb + end * eb <= 0) ||
          (pa >= reach && pa + end * ea >= reach)
        ) {
          continue;
        }
        const height = px * ey - py * ex;
        const foot = -(px * ex + py * ey);
        const across = (ax + bx) * ey - (ay + by) * ex;
        if (isCollecting) {
          // the directions of a cone turn from +y to +x: past its first side and not past its second
          if (height > 0 && across > 0 && ea >= -NORMAL_CONE_TOL_RAD && eb <= NORMAL_CONE_TOL_RAD) {
            this.#collectFoot(at / CONE_STRIDE, e, foot, height);
          }
          if (
            pa > 0 &&
            pb > 0 &&
            ax * py - ay * px <= NORMAL_CONE_TOL_RAD * pa &&
            bx * py - by * px >= -NORMAL_CONE_TOL_RAD * pb
          ) {
            this.#collectPoint(at / CONE_STRIDE, e, px, py);
          }
        }
        // both sides add up to nearly twice the unit direction of the middle, close enough to choose q
        const touch = foot + (height * (ea + eb)) / (height > 0 ? across + 2 : across - 2);
        const s = touch > 0 ? Math.min(touch, end) : 0;
        const qx = px + s * ex;
        const qy = py + s * ey;
        // the triangle must contain what is left of both sides
        const qa = pa + s * ea;
        const qb = pb + s * eb;
        const least = Math.min(qa, qb);
        const limit = qx * qx + qy * qy + reach * (EMPTY_DISC_REL_TOL * reach + rounding);
        if (least * reach > limit) {
          cones[at + 6] = limit / least;
          cutter = e;
        }
      }
    }
    return cutter;
  }

  /** Keeps the foot of a vertex on edge e as a candidate, if it lies inside the edge. */
  #collectFoot(k: number, e: number, foot: number, height: number): void {
    if (hasFoot(this.#boundary, e, foot, height, this.#rounding)) {
      const { tx, ty } = this.#boundary;
      this.#keep(k, e, height * ty[e], -height * tx[e]);
    }
  }

  /** Keeps the first point of edge e as a candidate, if its own normal cone contains the direction back. */
  #collectPoint(k: number, e: number, px: number, py: number): void {
    const { count, tx, ty, previous, isReflex } = this.#boundary;
    if (isReflex[e] === 0 || this.#vertex[k] >= e) {
      return;
    }
    const h = previous[e];
    const slack = NORMAL_CONE_TOL_RAD * Math.sqrt(px * px + py * py);
    if (
      px * tx[h] + py * ty[h] <= slack &&
      px * tx[e] + py * ty[e] >= -slack &&
      (px * ty[h] - py * tx[h] > 0 || px * ty[e] - py * tx[e] > 0)
    ) {
      this.#keep(k, count + e, px, py);
    }
  }

  #keep(cone: number, site: number, px: number, py: number): void {
    const k = this.#endCount++;
    this.#cone[k] = cone;
    this.#site[k] = site;
    this.#endX[k] = px;
    this.#endY[k] = py;
  }

  /** Fits the group box around all windows. */
  #fitBox(): void {
    const cones = this.#cones;
    const { ux, uy } = this.#box;
    let minU = Infinity;
    let maxU = -Infinity;
    let minV = Infinity;
    let maxV = -Infinity;
    let most = 0;
    for (let at = 0; at < CONE_STRIDE * this.#size; at += CONE_STRIDE) {
      const reach = cones[at + 6];
      const u = cones[at] * ux + cones[at + 1] * uy;
      const v = cones[at + 1] * ux - cones[at] * uy;
      const au = u + reach * (cones[at + 2] * ux + cones[at + 3] * uy);
      const av = v + reach * (cones[at + 3] * ux - cones[at + 2] * uy);
      const bu = u + reach * (cones[at + 4] * ux + cones[at + 5] * uy);
      const bv = v + reach * (cones[at + 5] * ux - cones[at + 4] * uy);
      minU = Math.min(minU, u, au, bu);
      maxU = Math.max(maxU, u, au, bu);
      minV = Math.min(minV, v, av, bv);
      maxV = Math.max(maxV, v, av, bv);
      most = Math.max(most, reach);
    }
    this.#box.take(minU, maxU, minV, maxV, NORMAL_CONE_TOL_RAD * most + this.#rounding);
  }

  /** Calls `take` with each candidate, relative to its vertex, that edges seen later have not ruled out. */
  forEachEnd(take: (vertex: number, site: number, px: number, py: number) => void): void {
    for (let k = 0; k < this.#endCount; k++) {
      const px = this.#endX[k];
      const py = this.#endY[k];
      const cone = this.#cone[k];
      const reach = this.#cones[CONE_STRIDE * cone + 6];
      const far = reach + NORMAL_CONE_TOL_RAD * reach + this.#rounding;
      if (px * px + py * py <= far * far) {
        take(this.#vertex[cone], this.#site[k], px, py);
      }
    }
  }
}
