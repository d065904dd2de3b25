import type { Boundary } from './boundary.ts';
import { hasFoot } from './has-foot.ts';
import { BOX_STRIDE, type ObbTree, SIDES_STRIDE } from './obb-tree-layout.ts';
import { EMPTY_DISC_REL_TOL, NORMAL_CONE_TOL_RAD, ROUNDING_REL_TOL } from './tolerances.ts';
import { Window } from './window.ts';

/**
 * Where the window reaches farther than this many times the distance to an edge, more than the nearest point
 * of the edge is worth a cut.
 */
const LONG_VIEW = 2;

/**
 * Edges before a vertex and after it that cut its window before anything else is looked at. Between spikes or
 * teeth the next ones leave a slit of what was half the plane, and the tree would show those of one side only
 * when it has been climbed to where it parts them.
 */
const EDGES_AROUND = 4;

/** Leaves that a seeker looks at before its window is cut anew, and the edges that are kept for it, those that cut it last. */
const LEAVES_BEFORE = 16;
const CUTTERS_KEPT = 16;
/** A window is cut anew when its reach has fallen below this share of what it was when it was cut. */
const MUCH_LESS = 0.25;

/**
 * Searches for the far ends of bottlenecks at one reflex vertex at a time: collects candidates among the
 * edges that it is shown, and rules out by its window edges that need not be shown.
 */
export class BottleneckSeeker {
  readonly #boundary: Boundary;
  readonly #boxes: Float64Array;
  readonly #tree: ObbTree;
  /** Rounding error of a distance between points of the boundary, mm. */
  readonly #rounding: number;
  readonly window: Window = new Window();
  vertex = -1;
  #x = 0;
  #y = 0;
  #count = 0;
  readonly #site: number[] = [];
  readonly #endX: number[] = [];
  readonly #endY: number[] = [];
  /** Edges that cut the window last, or would have but for its number of corners. */
  readonly #cutters = new Int32Array(CUTTERS_KEPT);
  #cutterCount = 0;
  /** Leaves looked at, and the reach of the window, since it was opened. */
  #leaves = 0;
  #openedReach = 0;

  constructor(boundary: Boundary, tree: ObbTree) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#tree = tree;
    this.#rounding = ROUNDING_REL_TOL * boundary.extent;
  }

  /** Starts over at reflex vertex v. */
  start(v: number): void {
    const { x, y, extent } = this.#boundary;
    this.vertex = v;
    this.#x = x[v];
    this.#y = y[v];
    this.#count = 0;
    this.#cutterCount = 0;
    this.#open(4 * extent);
  }

  /** Opens the window on all of the cone as far as `reach`. */
  #open(reach: number): void {
    const { tx, ty, previous } = this.#boundary;
    const v = this.vertex;
    const h = previous[v];
    this.window.open(-ty[h], tx[h], -ty[v], tx[v], reach);
    this.#openedReach = this.window.reach;
    this.#leaves = 0;
  }

  /** Cuts by the edges around the vertex. */
  cutByNeighbours(): void {
    const { next, previous } = this.#boundary;
    let before = this.vertex;
    let after = this.vertex;
    for (let k = 0; k < EDGES_AROUND; k++) {
      before = previous[before];
      after = next[after];
      this.cutBy(before, false);
      this.cutBy(after, false);
    }
  }

  /**
   * Cuts the window anew by what cut it last. How much a cut spares for rounding goes with the square of the reach of the window, so that the
   * same edges cut off more once the window is small; where walls are finely divided, what is spared else shows a share of all edges to each
   * vertex.
   */
  #tighten(): void {
    const cutters = this.#cutters.slice(0, Math.min(this.#cutterCount, CUTTERS_KEPT));
    this.#open(this.window.reach);
    this.cutByNeighbours();
    for (const e of cutters) {
      this.cutBy(e, false);
    }
  }

  /** Whether the box of a node may meet the window. */
  sees(node: number): boolean {
    const boxes = this.#boxes;
    const at = node * BOX_STRIDE;
    const halfU = boxes[at + 4];
    const slack = this.slack;
    return (
      halfU >= 0 &&
      this.window.meetsBox(
        boxes[at] - this.#x,
        boxes[at + 1] - this.#y,
        boxes[at + 2],
        boxes[at + 3],
        halfU + slack,
        boxes[at + 5] + slack,
      ) &&
      (this.#tree.isSlanted[node] === 0 || !this.#isBeyondSide(node, slack))
    );
  }

  /** Whether the window lies beyond one of the slanted sides of a node. */
  #isBeyondSide(node: number, slack: number): boolean {
    const { sides } = this.#tree;
    for (let at = node * SIDES_STRIDE; at < (node + 1) * SIDES_STRIDE; at += 3) {
      const nx = sides[at];
      const ny = sides[at + 1];
      if (this.window.isBeyond(nx, ny, sides[at + 2] - (nx * this.#x + ny * this.#y) + slack)) {
        return true;
      }
    }
    return false;
  }

  /** Distance from the window within which an end still counts as inside, mm. */
  get slack(): number {
    return NORMAL_CONE_TOL_RAD * this.window.reach + this.#rounding;
  }

  /**
   * Examines the edges of a leaf, as far ends and as limits to where far ends may lie. The last edge that cut
   * the window, or -1.
   */
  lookAt(leaf: number): number {
    const { previous } = this.#boundary;
    const { leafFrom, leafTo, leafStart } = this.#tree;
    const v = this.vertex;
    const from = leafFrom[leaf - leafStart];
    const to = leafTo[leaf - leafStart];
    if (
      ++this.#leaves > LEAVES_BEFORE &&
      (this.window.isFull || this.window.reach < MUCH_LESS * this.#openedReach)
    ) {
      this.#tighten();
    }
    let cutter = -1;
    for (let e = from; e < to; e++) {
      if (e !== v) {
        this.#collectPoint(e);
        if (e !== previous[v]) {
          this.#collectFoot(e);
          cutter = this.cutBy(e, e > from) ? e : cutter;
        }
      }
    }
    return cutter;
  }

  /** Cuts from the window what no empty disc can reach because of edge e; whether anything was cut. */
  cutBy(e: number, isPointSeen: boolean): boolean {
    const { x, y, tx, ty, length, previous } = this.#boundary;
    if (e === this.vertex || e === previous[this.vertex]) {
      return false;
    }
    const ax = x[e] - this.#x;
    const ay = y[e] - this.#y;
    const ex = tx[e];
    const ey = ty[e];
    const end = length[e];
    const foot = -(ax * ex + ay * ey);
    if (foot <= 0 && isPointSeen) {
      return false;
    }
    const s = Math.min(Math.max(foot, 0), end);
    const qx = ax + s * ex;
    const qy = ay + s * ey;
    const d2 = qx * qx + qy * qy;
    let isCut = this.#cutAt(qx, qy, d2);
    const reach = this.window.reach;
    if (reach * reach > LONG_VIEW * LONG_VIEW * d2) {
      // points seen at 45° from the nearest one
      const d = Math.sqrt(d2);
      for (let k = -1; k <= 1; k += 2) {
        const t = Math.min(Math.max(foot + k * d, 0), end);
        if (Math.abs(t - s) > d / 4) {
          const px = ax + t * ex;
          const py = ay + t * ey;
          isCut = this.#cutAt(px, py, px * px + py * py) || isCut;
        }
      }
    }
    if (isCut || this.window.isFull) {
      this.#cutters[this.#cutterCount++ % CUTTERS_KEPT] = e;
    }
    return isCut;
  }

  /**
   * Cuts off what lies beyond q: a disc on a diameter to there would contain q by more than an empty disc
   * may.
   */
  #cutAt(qx: number, qy: number, d2: number): boolean {
    const reach = this.window.reach;
    // nothing nearer than q lies beyond q
    return (
      d2 > 0 &&
      reach * reach > d2 &&
      this.window.cut(qx, qy, d2 + reach * (EMPTY_DISC_REL_TOL * reach + this.#rounding))
    );
  }

  /** Keeps the first point of edge e as a candidate for the far end. */
  #collectPoint(e: number): void {
    const { count, x, y, isReflex } = this.#boundary;
    if (isReflex[e] !== 0 && this.vertex < e) {
      const dx = x[e] - this.#x;
      const dy = y[e] - this.#y;
      if (this.#isInCone(this.vertex, dx, dy) && this.#isInCone(e, -dx, -dy)) {
        this.#keep(count + e, dx, dy);
      }
    }
  }

  /** Keeps the foot of the vertex on edge e as a candidate for the far end. */
  #collectFoot(e: number): void {
    const { x, y, tx, ty } = this.#boundary;
    const ax = x[e] - this.#x;
    const ay = y[e] - this.#y;
    const ex = tx[e];
    const ey = ty[e];
    const h = ax * ey - ay * ex;
    if (h > 0) {
      const s = -(ax * ex + ay * ey);
      if (hasFoot(this.#boundary, e, s, h, this.#rounding) && this.#isInCone(this.vertex, ey, -ex)) {
        this.#keep(e, h * ey, -h * ex);
      }
    }
  }

  #keep(site: number, px: number, py: number): void {
    const k = this.#count++;
    this.#site[k] = site;
    this.#endX[k] = px;
    this.#endY[k] = py;
  }

  /** Whether direction d lies in the closed normal cone of reflex vertex w. */
  #isInCone(w: number, dx: number, dy: number): boolean {
    const { tx, ty, previous } = this.#boundary;
    const h = previous[w];
    const slack = -NORMAL_CONE_TOL_RAD * Math.sqrt(dx * dx + dy * dy);
    // between the normals of the incoming and the outgoing edge, and on their side of the vertex
    return (
      dx * tx[h] + dy * ty[h] >= slack &&
      -(dx * tx[w] + dy * ty[w]) >= slack &&
      (dy * tx[h] - dx * ty[h] > 0 || dy * tx[w] - dx * ty[w] > 0)
    );
  }

  /** Calls `take` with each candidate, relative to the vertex, that edges seen later have not ruled out. */
  forEachEnd(take: (vertex: number, site: number, px: number, py: number) => void): void {
    const slack = this.slack;
    for (let k = 0; k < this.#count; k++) {
      if (this.window.holds(this.#endX[k], this.#endY[k], slack)) {
        take(this.vertex, this.#site[k], this.#endX[k], this.#endY[k]);
      }
    }
  }
}
