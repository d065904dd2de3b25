import type { Boundary } from './boundary.ts';
import { BOX_STRIDE, type ChainBoxes, LEAF_EDGES } from './chain-boxes.ts';
import { NeckDisc } from './neck-disc.ts';
import { NeckSeeker } from './neck-seeker.ts';

/**
 * Places where the clearance is least along the axis: discs without boundary inside that touch it at both ends of a diameter.
 * One end is always a reflex vertex; the other a reflex vertex or a point inside an edge.
 */
export interface Necks {
  readonly count: number;
  /** Point index of the reflex vertex at one end. */
  readonly vertex: readonly number[];
  /** Site at the other end: an edge index, or `boundary.count` plus the point index of a reflex vertex. */
  readonly site: readonly number[];
  /** Position of the other end, relative to the boundary's origin. */
  readonly endX: readonly number[];
  readonly endY: readonly number[];
}

/** Nodes that are looked at for all vertices of a leaf together before each goes on alone. */
const TOGETHER = 64;

/** All necks of the boundary; see `docs/method/medial-axis.md` for the search and its cost. */
export function findNecks(boundary: Boundary, tree: ChainBoxes): Necks {
  const search = new NeckSearch(boundary, tree);
  for (let from = 0; from < boundary.count; from += LEAF_EDGES) {
    search.searchFrom(from, Math.min(from + LEAF_EDGES, boundary.count));
  }
  return search.necks;
}

/**
 * The search for all vertices of one leaf. Neighbours see much the same, so one box around all their windows is taken down the tree first;
 * where the windows have too little in common for that, each goes down alone.
 */
class NeckSearch {
  readonly #boundary: Boundary;
  readonly #boxes: Float64Array;
  readonly #leafStart: number;
  readonly #disc: NeckDisc;
  readonly #seekers: NeckSeeker[];
  #active = 0;
  readonly #stack = new Int32Array(128);
  readonly #vertex: number[] = [];
  readonly #site: number[] = [];
  readonly #endX: number[] = [];
  readonly #endY: number[] = [];
  /** The last two edges that cut a window short: likely to do the same for the next vertex. */
  #lastCut = -1;
  #cutBefore = -1;
  /** Nodes still to be looked at together. */
  #patience = 0;
  /** The box around all windows: middle, unit direction, half extents. */
  #cx = 0;
  #cy = 0;
  #ux = 1;
  #uy = 0;
  #halfU = 0;
  #halfV = 0;

  constructor(boundary: Boundary, tree: ChainBoxes) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#leafStart = tree.leafStart;
    this.#disc = new NeckDisc(boundary, tree);
    this.#seekers = Array.from({ length: LEAF_EDGES }, () => new NeckSeeker(boundary, tree));
  }

  get necks(): Necks {
    return {
      count: this.#vertex.length,
      vertex: this.#vertex,
      site: this.#site,
      endX: this.#endX,
      endY: this.#endY,
    };
  }

  /** Adds the necks at reflex vertices from … to − 1, all of one leaf, but those with an earlier vertex. */
  searchFrom(from: number, to: number): void {
    const { isReflex } = this.#boundary;
    let leaf = this.#leafStart + Math.floor(from / LEAF_EDGES);
    this.#active = 0;
    const lastCut = this.#lastCut;
    const cutBefore = this.#cutBefore;
    for (let v = from; v < to; v++) {
      if (isReflex[v] !== 0) {
        const seeker = this.#seekers[this.#active++];
        seeker.start(v);
        if (lastCut >= 0) {
          seeker.cutBy(lastCut, false);
        }
        if (cutBefore >= 0) {
          seeker.cutBy(cutBefore, false);
        }
        this.#note(seeker.lookAt(leaf));
      }
    }
    if (this.#active === 0) {
      return;
    }
    this.#patience = this.#active > 1 ? TOGETHER : 0;
    this.#ux = this.#boxes[leaf * BOX_STRIDE + 2];
    this.#uy = this.#boxes[leaf * BOX_STRIDE + 3];
    this.#fitBox();
    for (; leaf > 1; leaf >>= 1) {
      this.#lookBelow(leaf ^ 1);
    }
    for (let k = 0; k < this.#active; k++) {
      this.#seekers[k].forEachEnd(this.#takeIfNeck);
    }
  }

  #note(cutter: number): void {
    if (cutter >= 0 && cutter !== this.#lastCut) {
      this.#cutBefore = this.#lastCut;
      this.#lastCut = cutter;
    }
  }

  /** Looks at all edges below a node that may lie in a window, nearer runs first: together, then one by one. */
  #lookBelow(root: number): void {
    if (this.#patience > 0 && !this.#sees(root)) {
      this.#patience--;
      return;
    }
    const stack = this.#stack;
    let size = 0;
    stack[size++] = root;
    while (size > 0) {
      const node = stack[--size];
      if (this.#patience <= 0) {
        for (let k = 0; k < this.#active; k++) {
          this.#lookAlone(node, this.#seekers[k], size);
        }
        continue;
      }
      this.#patience--;
      if (!this.#sees(node)) {
        continue;
      }
      if (node < this.#leafStart) {
        size = this.#pushBoth(node, this.#cx, this.#cy, size);
      } else if (this.#showAll(node)) {
        this.#fitBox();
      }
    }
  }

  /** Shows a leaf to all that may see it; whether a window was cut. */
  #showAll(leaf: number): boolean {
    let isCut = false;
    for (let k = 0; k < this.#active; k++) {
      const seeker = this.#seekers[k];
      if (seeker.sees(leaf)) {
        const cutter = seeker.lookAt(leaf);
        this.#note(cutter);
        isCut = isCut || cutter >= 0;
      }
    }
    return isCut;
  }

  /** Looks at all edges below a node that one seeker may see; the stack is free from `base` on. */
  #lookAlone(root: number, seeker: NeckSeeker, base: number): void {
    const { x, y } = this.#boundary;
    const stack = this.#stack;
    const vx = x[seeker.vertex];
    const vy = y[seeker.vertex];
    let size = base;
    stack[size++] = root;
    while (size > base) {
      const node = stack[--size];
      if (seeker.sees(node)) {
        if (node < this.#leafStart) {
          size = this.#pushBoth(node, vx, vy, size);
        } else {
          this.#note(seeker.lookAt(node));
        }
      }
    }
  }

  /** Puts the two nodes below on the stack, the one nearer to a point on top; the new size. */
  #pushBoth(node: number, px: number, py: number, size: number): number {
    const boxes = this.#boxes;
    const left = 2 * node * BOX_STRIDE;
    const right = left + BOX_STRIDE;
    const ax = boxes[left] - px;
    const ay = boxes[left + 1] - py;
    const bx = boxes[right] - px;
    const by = boxes[right + 1] - py;
    const isLeftNearer = ax * ax + ay * ay < bx * bx + by * by;
    this.#stack[size] = isLeftNearer ? 2 * node + 1 : 2 * node;
    this.#stack[size + 1] = isLeftNearer ? 2 * node : 2 * node + 1;
    return size + 2;
  }

  /** Fits the box around all windows, along the leaf's own direction. */
  #fitBox(): void {
    const { x, y } = this.#boundary;
    const ux = this.#ux;
    const uy = this.#uy;
    let minU = Infinity;
    let maxU = -Infinity;
    let minV = Infinity;
    let maxV = -Infinity;
    let slack = 0;
    for (let k = 0; k < this.#active; k++) {
      const seeker = this.#seekers[k];
      const window = seeker.window;
      const u = x[seeker.vertex] * ux + y[seeker.vertex] * uy;
      const v = y[seeker.vertex] * ux - x[seeker.vertex] * uy;
      window.measure(ux, uy);
      minU = Math.min(minU, u + window.minU);
      maxU = Math.max(maxU, u + window.maxU);
      minV = Math.min(minV, v + window.minV);
      maxV = Math.max(maxV, v + window.maxV);
      slack = Math.max(slack, seeker.slack);
    }
    const u = (minU + maxU) / 2;
    const v = (minV + maxV) / 2;
    this.#cx = u * ux - v * uy;
    this.#cy = u * uy + v * ux;
    this.#halfU = (maxU - minU) / 2 + slack;
    this.#halfV = (maxV - minV) / 2 + slack;
  }

  /** Whether the box of a node may meet the box around all windows: no side of either keeps them apart. */
  #sees(node: number): boolean {
    const boxes = this.#boxes;
    const at = node * BOX_STRIDE;
    const halfU = boxes[at + 4];
    if (halfU < 0) {
      return false;
    }
    const halfV = boxes[at + 5];
    const dx = boxes[at] - this.#cx;
    const dy = boxes[at + 1] - this.#cy;
    const ux = boxes[at + 2];
    const uy = boxes[at + 3];
    const gx = this.#ux;
    const gy = this.#uy;
    const c = Math.abs(gx * ux + gy * uy);
    const s = Math.abs(gx * uy - gy * ux);
    return (
      Math.abs(dx * gx + dy * gy) <= this.#halfU + halfU * c + halfV * s &&
      Math.abs(dy * gx - dx * gy) <= this.#halfV + halfU * s + halfV * c &&
      Math.abs(dx * ux + dy * uy) <= halfU + this.#halfU * c + this.#halfV * s &&
      Math.abs(dy * ux - dx * uy) <= halfV + this.#halfU * s + this.#halfV * c
    );
  }

  readonly #takeIfNeck = (v: number, site: number, px: number, py: number): void => {
    const { x, y } = this.#boundary;
    const d = Math.sqrt(px * px + py * py);
    if (this.#disc.isNeck(x[v] + px / 2, y[v] + py / 2, px / d, py / d, d / 2)) {
      this.#vertex.push(v);
      this.#site.push(site);
      this.#endX.push(x[v] + px);
      this.#endY.push(y[v] + py);
    }
  };
}
