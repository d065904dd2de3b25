import type { Boundary } from './boundary.ts';
import type { DiscIntruder } from './disc-intruder.ts';
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

/** Leaves that a seeker looks at before its window is cut anew, and the points that are kept for it, those that cut it last. */
const LEAVES_BEFORE = 16;
const CUTTERS_KEPT = 24;
/** Boxes that a seeker is shown before the corners of its window are asked about, and again after twice as many (our choice). */
const BOXES_BEFORE = 192;
/** Corners that are asked about at most, and how many of them may turn out to be right (our choice). */
const CORNERS_ASKED = 48;
const CORNERS_SETTLED = 4;
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
  /** Points that cut the window last, or would have but for its number of corners, relative to the vertex. */
  readonly #cutters = new Float64Array(2 * CUTTERS_KEPT);
  #cutterCount = 0;
  /** Leaves looked at, and the reach of the window, since it was opened. */
  #leaves = 0;
  #openedReach = 0;
  /** Boxes that are shown before the corners of the window are asked about, the next time and this time. */
  #patience = 0;
  #boxesLeft = 0;
  readonly #intruder: DiscIntruder;
  /** Corners whose discs are empty, x and y. */
  readonly #settled = new Float64Array(2 * CORNERS_SETTLED);
  #settledCount = 0;

  /** @param intruder may be shared: what one seeker keeps with it helps the next */
  constructor(boundary: Boundary, tree: ObbTree, intruder: DiscIntruder) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#tree = tree;
    this.#rounding = ROUNDING_REL_TOL * boundary.extent;
    this.#intruder = intruder;
  }

  /** Starts over at reflex vertex v. */
  start(v: number): void {
    const { x, y, extent } = this.#boundary;
    this.vertex = v;
    this.#x = x[v];
    this.#y = y[v];
    this.#count = 0;
    this.#cutterCount = 0;
    this.#patience = BOXES_BEFORE;
    this.#boxesLeft = BOXES_BEFORE;
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

  /** Cuts by the points that closed windows of others. */
  cutByKept(): void {
    const { kept, keptEdges } = this.#intruder;
    for (let k = 0; k < keptEdges.length; k++) {
      const e = keptEdges[k];
      if (e >= 0 && e !== this.vertex && e !== this.#boundary.previous[this.vertex]) {
        const qx = kept[2 * k] - this.#x;
        const qy = kept[2 * k + 1] - this.#y;
        this.#cutAt(qx, qy, qx * qx + qy * qy);
      }
    }
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
    const cutters = this.#cutters.slice(0, 2 * Math.min(this.#cutterCount, CUTTERS_KEPT));
    this.#open(this.window.reach);
    this.cutByNeighbours();
    for (let k = 0; k < cutters.length; k += 2) {
      this.#cutAt(cutters[k], cutters[k + 1], cutters[k] ** 2 + cutters[k + 1] ** 2);
    }
  }

  /**
   * Cuts the window until the disc to each of its corners is empty: what cuts a convex window cuts off a corner, and a point cuts off a corner
   * just if it lies in the disc on the diameter from the vertex to there. Points outside a window cut it too, and those the search does not
   * look at: a window between two walls, and beside all that lies beyond, would reach to the other end of the region.
   */
  #settleCorners(): void {
    const { window } = this;
    this.#settledCount = 0;
    for (let k = 0; k < CORNERS_ASKED && this.#settledCount < CORNERS_SETTLED; k++) {
      if (window.isFull || window.reach < MUCH_LESS * this.#openedReach) {
        this.#tighten();
      }
      const corner = this.#farthestUnsettled();
      if (corner < 0 || window.isFull) {
        return;
      }
      this.#settle(window.cornerX(corner), window.cornerY(corner));
    }
  }

  /** The corner farthest off of those not known to have an empty disc, -1 for none. */
  #farthestUnsettled(): number {
    const { window } = this;
    let farthest = -1;
    let most = 0;
    for (let i = 0; i < window.size; i++) {
      const px = window.cornerX(i);
      const py = window.cornerY(i);
      const d2 = px * px + py * py;
      if (d2 > most && !this.#isSettled(px, py)) {
        most = d2;
        farthest = i;
      }
    }
    return farthest;
  }

  #isSettled(px: number, py: number): boolean {
    for (let k = 0; k < this.#settledCount; k++) {
      if (this.#settled[2 * k] === px && this.#settled[2 * k + 1] === py) {
        return true;
      }
    }
    return false;
  }

  /** Cuts off a corner of the window, or keeps it for settled. */
  #settle(px: number, py: number): void {
    const intruder = this.#intruder;
    const spared = 2 * this.window.reach * (EMPTY_DISC_REL_TOL * this.window.reach + this.#rounding);
    const radius2 = (px * px + py * py) / 4 - spared;
    let isCut = false;
    if (intruder.find(this.#x + px / 2, this.#y + py / 2, radius2, this.vertex)) {
      const qx = intruder.x - this.#x;
      const qy = intruder.y - this.#y;
      const reach = this.window.reach;
      isCut = this.#cutAt(qx, qy, qx * qx + qy * qy);
      if (this.window.reach < MUCH_LESS * reach) {
        intruder.keep();
      }
    }
    if (!isCut) {
      this.#settled[2 * this.#settledCount] = px;
      this.#settled[2 * this.#settledCount++ + 1] = py;
    }
  }

  /** Whether the box of a node may meet the window. */
  sees(node: number): boolean {
    if (--this.#boxesLeft < 0) {
      this.#boxesLeft = this.#patience;
      this.#patience *= 2;
      this.#settleCorners();
    }
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
    return isCut;
  }

  /**
   * Cuts off what lies beyond q: a disc on a diameter to there would contain q by more than an empty disc
   * may.
   */
  #cutAt(qx: number, qy: number, d2: number): boolean {
    const reach = this.window.reach;
    // nothing nearer than q lies beyond q
    if (!(d2 > 0 && reach * reach > d2)) {
      return false;
    }
    const isCut = this.window.cut(qx, qy, d2 + reach * (EMPTY_DISC_REL_TOL * reach + this.#rounding));
    if (isCut || this.window.isFull) {
      const at = 2 * (this.#cutterCount++ % CUTTERS_KEPT);
      this.#cutters[at] = qx;
      this.#cutters[at + 1] = qy;
    }
    return isCut;
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
