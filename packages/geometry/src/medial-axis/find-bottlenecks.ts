import { poll } from '@pourproof/plane';
import { BottleneckDisc } from './bottleneck-disc.ts';
import { BottleneckSeeker } from './bottleneck-seeker.ts';
import type { Boundary } from './boundary.ts';
import { DiscIntruder } from './disc-intruder.ts';
import { RUN_EDGES } from './edge-runs.ts';
import { GroupBox } from './group-box.ts';
import { BOX_STRIDE, type ObbTree } from './obb-tree-layout.ts';
import { ThinCones } from './thin-cones.ts';
import { SAME_CONTACT_REL_TOL } from './tolerances.ts';

/**
 * Local minima of the clearance along the axis: discs empty of boundary that touch it at both ends of a
 * diameter. One end is always a reflex vertex; the other is a reflex vertex or a point inside an edge.
 */
export interface Bottlenecks {
  readonly count: number;
  /** Index of the reflex vertex at one end. */
  readonly vertex: readonly number[];
  /** Site at the other end: an edge index, or `boundary.count` plus the point index of a reflex vertex. */
  readonly site: readonly number[];
  /** Position of the other end, relative to the boundary's origin. */
  readonly endX: readonly number[];
  readonly endY: readonly number[];
}

/**
 * Boxes tested for all seekers of a leaf together before each searches alone, per seeker and as a share of
 * the square of the levels of the tree: there is one subtree a level to descend into, and few descents reach
 * the leaves.
 */
const TOGETHER_SHARE = 0.2;

/**
 * All bottlenecks of the boundary; see `docs/method/medial-axis.md` for the search and its cost.
 */
export function findBottlenecks(boundary: Boundary, tree: ObbTree): Bottlenecks {
  const search = new BottleneckSearch(boundary, tree);
  for (let r = 0; r < tree.runs.count; r++) {
    poll();
    search.searchFrom(tree.runs.from[r], tree.runs.to[r], tree.leafOfRun[r]);
  }
  return search.bottlenecks;
}

/**
 * The search for all vertices of one leaf. Neighbours see much the same, so the tree is descended once for a
 * box around all their windows: first for thin normal cones, then for the others. Where the windows have too
 * little in common, each vertex searches alone.
 */
class BottleneckSearch {
  readonly #boundary: Boundary;
  readonly #boxes: Float64Array;
  readonly #leafStart: number;
  readonly #disc: BottleneckDisc;
  readonly #box: GroupBox;
  readonly #thin: ThinCones;
  readonly #seekers: BottleneckSeeker[];
  #leaf = -1;
  #active = 0;
  readonly #stack = new Int32Array(128);
  readonly #vertex: number[] = [];
  readonly #site: number[] = [];
  readonly #endX: number[] = [];
  readonly #endY: number[] = [];
  /** The last two edges that cut a window: likely to cut the next one too. */
  #lastCut = -1;
  #cutBefore = -1;
  /** Boxes to be tested together per seeker, and how many of them are left. */
  readonly #together: number;
  #patience = 0;
  /** Number of bottlenecks found before this leaf. */
  #firstOfLeaf = 0;

  constructor(boundary: Boundary, tree: ObbTree) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#leafStart = tree.leafStart;
    this.#together = TOGETHER_SHARE * Math.log2(tree.leafStart) ** 2;
    this.#disc = new BottleneckDisc(boundary, tree);
    this.#box = new GroupBox(tree);
    this.#thin = new ThinCones(boundary, tree, this.#box);
    const intruder = new DiscIntruder(boundary, tree);
    this.#seekers = Array.from({ length: RUN_EDGES }, () => new BottleneckSeeker(boundary, tree, intruder));
  }

  get bottlenecks(): Bottlenecks {
    return {
      count: this.#vertex.length,
      vertex: this.#vertex,
      site: this.#site,
      endX: this.#endX,
      endY: this.#endY,
    };
  }

  /**
   * Adds the bottlenecks at reflex vertices `from` … `to − 1`, all of one leaf, except those whose other end
   * is an earlier vertex.
   */
  searchFrom(from: number, to: number, leaf: number): void {
    const { isReflex } = this.#boundary;
    const thin = this.#thin;
    this.#leaf = leaf;
    this.#box.turnTo(leaf);
    this.#active = 0;
    this.#firstOfLeaf = this.#vertex.length;
    thin.clear();
    let canGoTogether = true;
    for (let v = from; v < to; v++) {
      if (isReflex[v] !== 0 && !thin.add(v)) {
        this.#start(v, leaf);
      }
    }
    if (thin.size > 0) {
      if (thin.seek(leaf)) {
        thin.forEachEnd(this.#takeIfBottleneck);
      } else {
        canGoTogether = false;
        for (let k = 0; k < thin.size; k++) {
          this.#start(thin.vertexAt(k), leaf);
        }
      }
    }
    if (this.#active > 0) {
      this.#seek(leaf, canGoTogether);
    }
  }

  /** Starts a seeker at vertex v of a leaf. */
  #start(v: number, leaf: number): void {
    const seeker = this.#seekers[this.#active++];
    seeker.start(v);
    seeker.cutByKept();
    if (this.#lastCut >= 0) {
      seeker.cutBy(this.#lastCut, false);
    }
    if (this.#cutBefore >= 0) {
      seeker.cutBy(this.#cutBefore, false);
    }
    seeker.cutByNeighbours();
    this.#note(seeker.lookAt(leaf));
  }

  /** Searches the tree for all seekers, from their own leaf on. */
  #seek(own: number, canGoTogether: boolean): void {
    // where every other vertex is reflex, as on spikes, the windows of two neighbours have too little in
    // common
    this.#patience = canGoTogether && this.#active > 2 ? this.#together * this.#active : 0;
    if (this.#patience > 0) {
      this.#fitBox();
    }
    for (let below = own; below > 1; below >>= 1) {
      this.#lookBelow(below ^ 1);
    }
    for (let k = 0; k < this.#active; k++) {
      this.#seekers[k].forEachEnd(this.#takeIfBottleneck);
    }
  }

  #note(cutter: number): void {
    if (cutter >= 0 && cutter !== this.#lastCut) {
      this.#cutBefore = this.#lastCut;
      this.#lastCut = cutter;
    }
  }

  /**
   * Shows the seekers all edges below a node that may lie in a window, nearer runs first: together, then one
   * by one.
   */
  #lookBelow(root: number): void {
    const stack = this.#stack;
    const box = this.#box;
    let size = 0;
    if (this.#patience <= 0 || box.sees(root)) {
      stack[size++] = root;
    }
    this.#patience--;
    while (size > 0) {
      const node = stack[--size];
      if (this.#patience <= 0) {
        for (let k = 0; k < this.#active; k++) {
          this.#lookAlone(node, this.#seekers[k], size);
        }
      } else if (node >= this.#leafStart) {
        if (this.#showAll(node)) {
          this.#fitBox();
        }
      } else {
        this.#patience -= 2;
        size = box.pushSeen(node, stack, size);
      }
    }
  }

  /** Shows a leaf to all seekers whose window it may meet; whether a window was cut. */
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

  /** Shows one seeker all edges below a node that its window may meet; the stack is free from `base` on. */
  #lookAlone(root: number, seeker: BottleneckSeeker, base: number): void {
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

  /** Pushes both children of a node, the one nearer to a point on top; the new size of the stack. */
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

  /** Fits the group box around all windows. */
  #fitBox(): void {
    const { x, y } = this.#boundary;
    const { ux, uy } = this.#box;
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
    this.#box.take(minU, maxU, minV, maxV, slack);
  }

  readonly #takeIfBottleneck = (v: number, site: number, px: number, py: number): void => {
    const { x, y } = this.#boundary;
    const d = Math.sqrt(px * px + py * py);
    if (!this.#disc.isBottleneck(this.#leaf, x[v] + px / 2, y[v] + py / 2, px / d, py / d, d / 2)) {
      return;
    }
    const twin = this.#twinOf(v, x[v] + px, y[v] + py, (SAME_CONTACT_REL_TOL * d) / 2);
    const at = twin < 0 ? this.#vertex.length : twin;
    if (twin < 0 || d < Math.hypot(this.#endX[twin] - x[v], this.#endY[twin] - y[v])) {
      this.#vertex[at] = v;
      this.#site[at] = site;
      this.#endX[at] = x[v] + px;
      this.#endY[at] = y[v] + py;
    }
  };

  /**
   * A bottleneck of this leaf at vertex v with the same far end within `slack`, -1 for none: of walls within
   * rounding of each other the nearer counts.
   */
  #twinOf(v: number, endX: number, endY: number, slack: number): number {
    for (let k = this.#vertex.length - 1; k >= this.#firstOfLeaf; k--) {
      if (this.#vertex[k] === v && Math.hypot(this.#endX[k] - endX, this.#endY[k] - endY) <= slack) {
        return k;
      }
    }
    return -1;
  }
}
