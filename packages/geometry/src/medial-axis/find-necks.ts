import type { Boundary } from './boundary.ts';
import { BOX_STRIDE, type ChainBoxes, LEAF_EDGES } from './chain-boxes.ts';
import { NeckDisc } from './neck-disc.ts';
import { CONE_SLACK_RAD, EMPTY_DISC_SHARE, ROUNDING_SHARE } from './tolerances.ts';
import { Window } from './window.ts';

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

/** Beyond this many times the distance to an edge, points of the edge besides the nearest are worth a cut. */
const LONG_VIEW = 2;

/** All necks of the boundary; see `docs/method/medial-axis.md` for the search and its cost. */
export function findNecks(boundary: Boundary, tree: ChainBoxes): Necks {
  const search = new NeckSearch(boundary, tree);
  for (let v = 0; v < boundary.count; v++) {
    if (boundary.isReflex[v] !== 0) {
      search.searchFrom(v);
    }
  }
  return search.necks;
}

/** Buffers and found necks of one run. */
class NeckSearch {
  readonly #boundary: Boundary;
  readonly #boxes: Float64Array;
  readonly #leafStart: number;
  /** Error of a distance between points of the boundary, mm. */
  readonly #rounding: number;
  readonly #disc: NeckDisc;
  readonly #window = new Window();
  readonly #stack = new Int32Array(128);
  readonly #vertex: number[] = [];
  readonly #site: number[] = [];
  readonly #endX: number[] = [];
  readonly #endY: number[] = [];
  #candidates = 0;
  readonly #candidateSite: number[] = [];
  readonly #candidateX: number[] = [];
  readonly #candidateY: number[] = [];
  /** The last two edges that cut a window short: likely to do the same for the next vertex. */
  #lastCut = -1;
  #cutBefore = -1;

  constructor(boundary: Boundary, tree: ChainBoxes) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#leafStart = tree.leafStart;
    this.#rounding = ROUNDING_SHARE * boundary.extent;
    this.#disc = new NeckDisc(boundary, tree);
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

  /** Adds the necks at reflex vertex v, but not those that a vertex before v has with it. */
  searchFrom(v: number): void {
    const { tx, ty, previous, extent } = this.#boundary;
    const h = previous[v];
    this.#candidates = 0;
    this.#window.open(-ty[h], tx[h], -ty[v], tx[v], 4 * extent);
    const wasLast = this.#lastCut;
    const wasBefore = this.#cutBefore;
    if (wasLast >= 0) {
      this.#cutBy(wasLast, v);
    }
    if (wasBefore >= 0) {
      this.#cutBy(wasBefore, v);
    }
    let node = this.#leafStart + Math.floor(v / LEAF_EDGES);
    this.#lookAt(node, v);
    for (; node > 1; node >>= 1) {
      this.#lookBelow(node ^ 1, v);
    }
    this.#takeNecks(v);
  }

  /** Looks at all edges below a node that may lie in the window, nearer runs first. */
  #lookBelow(root: number, v: number): void {
    const boxes = this.#boxes;
    const stack = this.#stack;
    const window = this.#window;
    const vx = this.#boundary.x[v];
    const vy = this.#boundary.y[v];
    let size = 0;
    stack[size++] = root;
    while (size > 0) {
      const node = stack[--size];
      const at = node * BOX_STRIDE;
      const slack = CONE_SLACK_RAD * window.reach + this.#rounding;
      if (
        boxes[at + 4] < 0 ||
        !window.meetsBox(
          boxes[at] - vx,
          boxes[at + 1] - vy,
          boxes[at + 2],
          boxes[at + 3],
          boxes[at + 4] + slack,
          boxes[at + 5] + slack,
        )
      ) {
        continue;
      }
      if (node >= this.#leafStart) {
        this.#lookAt(node, v);
        continue;
      }
      const left = at * 2;
      const right = left + BOX_STRIDE;
      const ax = boxes[left] - vx;
      const ay = boxes[left + 1] - vy;
      const bx = boxes[right] - vx;
      const by = boxes[right + 1] - vy;
      const isLeftNearer = ax * ax + ay * ay < bx * bx + by * by;
      stack[size++] = isLeftNearer ? 2 * node + 1 : 2 * node;
      stack[size++] = isLeftNearer ? 2 * node : 2 * node + 1;
    }
  }

  /** Looks at the edges of a leaf: as other ends, and as limits to where other ends may be. */
  #lookAt(leaf: number, v: number): void {
    const { count, previous } = this.#boundary;
    const from = LEAF_EDGES * (leaf - this.#leafStart);
    const to = Math.min(from + LEAF_EDGES, count);
    for (let e = from; e < to; e++) {
      if (e !== v) {
        this.#collectPoint(e, v);
        if (e !== previous[v]) {
          this.#collectFoot(e, v);
          this.#cutBy(e, v);
        }
      }
    }
  }

  /** Cuts from the window what an empty disc can't reach for edge e. */
  #cutBy(e: number, v: number): void {
    const { x, y, tx, ty, length, previous } = this.#boundary;
    if (e === v || e === previous[v]) {
      return;
    }
    const ax = x[e] - x[v];
    const ay = y[e] - y[v];
    const foot = -(ax * tx[e] + ay * ty[e]);
    const end = length[e];
    const s = Math.min(Math.max(foot, 0), end);
    const qx = ax + s * tx[e];
    const qy = ay + s * ty[e];
    const d2 = qx * qx + qy * qy;
    let isCut = this.#cutAt(qx, qy, d2);
    const reach = this.#window.reach;
    if (reach * reach > LONG_VIEW * LONG_VIEW * d2) {
      // points that are seen at half a right angle from the nearest one
      const d = Math.sqrt(d2);
      for (let k = -1; k <= 1; k += 2) {
        const t = Math.min(Math.max(foot + k * d, 0), end);
        if (Math.abs(t - s) > d / 4) {
          const px = ax + t * tx[e];
          const py = ay + t * ty[e];
          isCut = this.#cutAt(px, py, px * px + py * py) || isCut;
        }
      }
    }
    if (isCut && e !== this.#lastCut) {
      this.#cutBefore = this.#lastCut;
      this.#lastCut = e;
    }
  }

  /** Cuts off what lies beyond q: a disc on a diameter to there would hold q, not only within what makes a disc count as empty. */
  #cutAt(qx: number, qy: number, d2: number): boolean {
    const reach = this.#window.reach;
    return d2 > 0 && this.#window.cut(qx, qy, d2 + reach * (EMPTY_DISC_SHARE * reach + this.#rounding));
  }

  /** Keeps the first point of edge e as a possible other end. */
  #collectPoint(e: number, v: number): void {
    const { count, x, y, isReflex } = this.#boundary;
    if (isReflex[e] !== 0 && v < e) {
      const dx = x[e] - x[v];
      const dy = y[e] - y[v];
      if (this.#isInCone(v, dx, dy) && this.#isInCone(e, -dx, -dy)) {
        this.#keep(count + e, dx, dy);
      }
    }
  }

  /** Keeps the foot of v on edge e as a possible other end. */
  #collectFoot(e: number, v: number): void {
    const { x, y, tx, ty, length, next, isReflex } = this.#boundary;
    const ax = x[e] - x[v];
    const ay = y[e] - y[v];
    const h = ax * ty[e] - ay * tx[e];
    if (h > 0) {
      const s = -(ax * tx[e] + ay * ty[e]);
      const margin = CONE_SLACK_RAD * h;
      const low = isReflex[e] !== 0 ? margin : -margin;
      const high = isReflex[next[e]] !== 0 ? length[e] - margin : length[e] + margin;
      if (s > low && s < high && this.#isInCone(v, ty[e], -tx[e])) {
        this.#keep(e, h * ty[e], -h * tx[e]);
      }
    }
  }

  #keep(site: number, px: number, py: number): void {
    this.#candidateSite[this.#candidates] = site;
    this.#candidateX[this.#candidates] = px;
    this.#candidateY[this.#candidates++] = py;
  }

  /** Whether direction d lies in the closed cone of normals of reflex vertex w. */
  #isInCone(w: number, dx: number, dy: number): boolean {
    const { tx, ty, previous } = this.#boundary;
    const h = previous[w];
    const slack = -CONE_SLACK_RAD * Math.sqrt(dx * dx + dy * dy);
    // not before the normal of the edge that arrives, not after the normal of the edge that leaves
    return (
      dx * tx[h] + dy * ty[h] >= slack &&
      -(dx * tx[w] + dy * ty[w]) >= slack &&
      (dy * tx[h] - dx * ty[h] > 0 || dy * tx[w] - dx * ty[w] > 0)
    );
  }

  #takeNecks(v: number): void {
    const { x, y } = this.#boundary;
    const window = this.#window;
    const slack = CONE_SLACK_RAD * window.reach + this.#rounding;
    for (let k = 0; k < this.#candidates; k++) {
      const px = this.#candidateX[k];
      const py = this.#candidateY[k];
      if (window.holds(px, py, slack)) {
        const d = Math.sqrt(px * px + py * py);
        if (this.#disc.isNeck(x[v] + px / 2, y[v] + py / 2, px / d, py / d, d / 2)) {
          this.#vertex.push(v);
          this.#site.push(this.#candidateSite[k]);
          this.#endX.push(x[v] + px);
          this.#endY.push(y[v] + py);
        }
      }
    }
  }
}
