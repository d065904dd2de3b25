import type { Boundary } from './boundary.ts';
import type { BoxTree } from './box-tree.ts';
import { CONE_SLACK_RAD, EMPTY_DISC_SHARE, ROUNDING_SHARE, SEARCH_CONE_RAD } from './tolerances.ts';

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

/** Contacts this close to the ends of the diameter, as a share of the radius, lie on neither side of it. */
const SIDE_SHARE = 1e-6;

/** Points on either side of a reflex vertex that are looked at for one that keeps other ends near. */
const NEIGHBOURS = 6;

/** All necks of the boundary; near-linear where boxes of consecutive edges overlap little. */
export function findNecks(boundary: Boundary, tree: BoxTree): Necks {
  const search = new NeckSearch(boundary, tree);
  const { isReflex, previous, tx, ty } = boundary;
  for (let v = 0; v < boundary.count; v++) {
    if (isReflex[v] === 0) {
      continue;
    }
    const h = previous[v];
    const ux = -ty[h];
    const uy = tx[h];
    // normals of the two edges at a reflex vertex turn from +y to +x
    const cross = tx[h] * ty[v] - ty[h] * tx[v];
    const angle = Math.atan2(Math.max(0, -cross), tx[h] * tx[v] + ty[h] * ty[v]);
    const parts = Math.max(1, Math.ceil(angle / SEARCH_CONE_RAD));
    let fromX = ux;
    let fromY = uy;
    for (let k = 1; k <= parts; k++) {
      const c = Math.cos((angle * k) / parts);
      const s = Math.sin((angle * k) / parts);
      const toX = k === parts ? -ty[v] : ux * c + uy * s;
      const toY = k === parts ? tx[v] : uy * c - ux * s;
      search.searchCone(v, fromX, fromY, toX, toY);
      fromX = toX;
      fromY = toY;
    }
  }
  return search.necks();
}

/** Buffers and found necks of one run. */
class NeckSearch {
  readonly #boundary: Boundary;
  readonly #boxes: Float64Array;
  readonly #levelStart: readonly number[];
  readonly #levelSize: readonly number[];
  readonly #top: number;
  /** Error of a distance between points of the boundary, mm. */
  readonly #rounding: number;
  /** Offset from the vertex of a point that bounds the search. */
  #nearX = 0;
  #nearY = 0;
  /** Pairs (level, index in level). */
  readonly #stack = new Int32Array(512);
  readonly #vertex: number[] = [];
  readonly #site: number[] = [];
  readonly #endX: number[] = [];
  readonly #endY: number[] = [];
  #candidateSite: number[] = [];
  #candidateX: number[] = [];
  #candidateY: number[] = [];
  #lastHit = -1;
  #lastViolator = -1;

  constructor(boundary: Boundary, tree: BoxTree) {
    this.#boundary = boundary;
    this.#boxes = tree.boxes;
    this.#levelStart = tree.levelStart;
    this.#levelSize = tree.levelSize;
    this.#top = tree.levelStart.length - 1;
    this.#rounding = ROUNDING_SHARE * boundary.extent;
  }

  necks(): Necks {
    return {
      count: this.#vertex.length,
      vertex: this.#vertex,
      site: this.#site,
      endX: this.#endX,
      endY: this.#endY,
    };
  }

  /** Adds the necks at vertex v whose other end lies in the cone from u0 turning from +y to +x until u1. */
  searchCone(v: number, u0x: number, u0y: number, u1x: number, u1y: number): void {
    const reach = this.#collectCandidates(v, u0x, u0y, u1x, u1y) * (1 + EMPTY_DISC_SHARE) + this.#rounding;
    for (let k = 0; k < this.#candidateSite.length; k++) {
      const px = this.#candidateX[k];
      const py = this.#candidateY[k];
      if (px * px + py * py <= reach * reach) {
        this.#takeIfNeck(v, this.#candidateSite[k], px, py);
      }
    }
  }

  #takeIfNeck(v: number, site: number, px: number, py: number): void {
    const { x, y } = this.#boundary;
    const d = Math.sqrt(px * px + py * py);
    if (!this.#isKnown(v, site) && this.#isNeck(x[v] + px / 2, y[v] + py / 2, px / d, py / d, d / 2)) {
      this.#vertex.push(v);
      this.#site.push(site);
      this.#endX.push(x[v] + px);
      this.#endY.push(y[v] + py);
    }
  }

  #isKnown(v: number, site: number): boolean {
    for (let k = this.#vertex.length - 1; k >= 0 && this.#vertex[k] === v; k--) {
      if (this.#site[k] === site) {
        return true;
      }
    }
    return false;
  }

  /** Fills the candidates and returns how far, at most, an empty disc through v with its centre in the cone can reach. */
  // biome-ignore lint/complexity/noExcessiveLinesPerFunction: one traversal whose dozen variables would all have to be handed on
  #collectCandidates(v: number, u0x: number, u0y: number, u1x: number, u1y: number): number {
    const { count, x, y, tx, ty, length, next, previous, isReflex, extent } = this.#boundary;
    const boxes = this.#boxes;
    const stack = this.#stack;
    const vx = x[v];
    const vy = y[v];
    const before = previous[v];
    const umx = u0x + u1x;
    const umy = u0y + u1y;
    this.#candidateSite = [];
    this.#candidateX = [];
    this.#candidateY = [];
    let reach = 4 * extent;
    if (this.#lastHit >= 0) {
      reach = Math.min(reach, this.#wallAcross(this.#lastHit, v, u0x, u0y, u1x, u1y));
    }
    let reach2 = reach * reach;
    let slack = CONE_SLACK_RAD * reach;
    // an empty disc on a diameter from v holds none of these: its other end is on the near side of a line through each
    this.#findNear(v, previous, umx, umy);
    const firstX = this.#nearX;
    const firstY = this.#nearY;
    this.#findNear(v, next, umx, umy);
    const lastX = this.#nearX;
    const lastY = this.#nearY;
    const first2 = (firstX * firstX + firstY * firstY) * (1 + EMPTY_DISC_SHARE);
    const last2 = (lastX * lastX + lastY * lastY) * (1 + EMPTY_DISC_SHARE);
    let size = 0;
    stack[size++] = this.#top;
    stack[size++] = 0;
    while (size > 0) {
      const index = stack[--size];
      const level = stack[--size];
      const at = 4 * (this.#levelStart[level] + index);
      const minX = boxes[at] - vx;
      const minY = boxes[at + 1] - vy;
      const maxX = boxes[at + 2] - vx;
      const maxY = boxes[at + 3] - vy;
      const dx = minX > 0 ? minX : Math.min(maxX, 0);
      const dy = minY > 0 ? minY : Math.min(maxY, 0);
      if (
        dx * dx + dy * dy > reach2 ||
        u0x * (u0x > 0 ? minY : maxY) - u0y * (u0y > 0 ? maxX : minX) > slack ||
        u1x * (u1x > 0 ? maxY : minY) - u1y * (u1y > 0 ? minX : maxX) < -slack ||
        umx * (umx > 0 ? maxX : minX) + umy * (umy > 0 ? maxY : minY) < 0 ||
        firstX * (firstX > 0 ? minX : maxX) + firstY * (firstY > 0 ? minY : maxY) > first2 ||
        lastX * (lastX > 0 ? minX : maxX) + lastY * (lastY > 0 ? minY : maxY) > last2
      ) {
        continue;
      }
      if (level > 0) {
        const below = this.#levelStart[level - 1];
        const left = 2 * index;
        if (left + 1 < this.#levelSize[level - 1]) {
          const nearRight =
            boxDistance2(boxes, 4 * (below + left + 1), vx, vy) <
            boxDistance2(boxes, 4 * (below + left), vx, vy);
          stack[size++] = level - 1;
          stack[size++] = nearRight ? left : left + 1;
          stack[size++] = level - 1;
          stack[size++] = nearRight ? left + 1 : left;
        } else {
          stack[size++] = level - 1;
          stack[size++] = left;
        }
        continue;
      }
      const e = index;
      if (e !== v) {
        const ax = x[e] - vx;
        const ay = y[e] - vy;
        // the edge's first point, as a bound and as a possible other end
        const along0 = ax * u0x + ay * u0y;
        const along1 = ax * u1x + ay * u1y;
        const d2 = ax * ax + ay * ay;
        if (
          along0 > 0 &&
          along1 > 0 &&
          d2 <= reach2 * (1 + EMPTY_DISC_SHARE) &&
          u0x * ay - u0y * ax <= slack &&
          u1x * ay - u1y * ax >= -slack
        ) {
          const bound = d2 / Math.min(along0, along1);
          if (bound < reach) {
            reach = bound;
          }
          if (isReflex[e] !== 0 && v < e && this.#isInCone(e, -ax, -ay)) {
            this.#candidateSite.push(count + e);
            this.#candidateX.push(ax);
            this.#candidateY.push(ay);
          }
        }
        if (e !== before) {
          const nx = -ty[e];
          const ny = tx[e];
          const h = -(ax * nx + ay * ny);
          if (h > 0) {
            const bound = this.#wallAcross(e, v, u0x, u0y, u1x, u1y);
            if (bound < reach) {
              reach = bound;
              this.#lastHit = e;
            }
            if (
              h <= reach * (1 + EMPTY_DISC_SHARE) + this.#rounding &&
              -u0x * ny + u0y * nx <= CONE_SLACK_RAD &&
              u1x * ny - u1y * nx <= CONE_SLACK_RAD &&
              umx * nx + umy * ny < 0
            ) {
              const s = -(ax * tx[e] + ay * ty[e]);
              const margin = CONE_SLACK_RAD * h;
              const low = isReflex[e] !== 0 ? margin : -margin;
              const high = isReflex[next[e]] !== 0 ? length[e] - margin : length[e] + margin;
              if (s > low && s < high) {
                this.#candidateSite.push(e);
                this.#candidateX.push(-h * nx);
                this.#candidateY.push(-h * ny);
              }
            }
          }
        }
        reach2 = reach * reach;
        slack = CONE_SLACK_RAD * reach;
      }
    }
    return reach;
  }

  /** Sets `near` to the point, a few steps from v, that shrinks discs at v towards u most; to zero if none does. */
  #findNear(v: number, step: Int32Array, ux: number, uy: number): void {
    const { x, y } = this.#boundary;
    let most = 0;
    this.#nearX = 0;
    this.#nearY = 0;
    for (let k = 0, p = step[step[v]]; k < NEIGHBOURS && p !== v; k++, p = step[p]) {
      const dx = x[p] - x[v];
      const dy = y[p] - y[v];
      const along = dx * ux + dy * uy;
      const d2 = dx * dx + dy * dy;
      if (along > most * d2) {
        most = along / d2;
        this.#nearX = dx;
        this.#nearY = dy;
      }
    }
  }

  /** Farthest that one sees from v within the cone if edge e spans it from side to side, else infinity. */
  #wallAcross(e: number, v: number, u0x: number, u0y: number, u1x: number, u1y: number): number {
    const { x, y, tx, ty, next, previous } = this.#boundary;
    if (e === v || e === previous[v]) {
      return Infinity;
    }
    const ax = x[e] - x[v];
    const ay = y[e] - y[v];
    const h = ax * ty[e] - ay * tx[e];
    const cos0 = u0x * ty[e] - u0y * tx[e];
    const cos1 = u1x * ty[e] - u1y * tx[e];
    if (h <= 0 || cos0 <= 0 || cos1 <= 0) {
      return Infinity;
    }
    const bx = x[next[e]] - x[v];
    const by = y[next[e]] - y[v];
    // seen from inside, an edge runs from +x to +y around the viewer: its start lies beyond u1, its end beyond u0
    if (u1x * ay - u1y * ax > 0 || u0x * by - u0y * bx < 0) {
      return Infinity;
    }
    return h / Math.min(cos0, cos1);
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
      dx * (-ty[h] - ty[w]) + dy * (tx[h] + tx[w]) > 0
    );
  }

  /**
   * Whether the disc is empty and does not touch boundary on both sides of its diameter along u: with contacts all around, the
   * clearance is greatest there, not least.
   */
  #isNeck(mx: number, my: number, ux: number, uy: number, radius: number): boolean {
    const inner = Math.max(0, radius * (1 - EMPTY_DISC_SHARE) - this.#rounding);
    const outer = radius * (1 + EMPTY_DISC_SHARE) + this.#rounding;
    const violator = this.#lastViolator;
    if (violator >= 0 && this.#edgeDistance2(violator, mx, my) < inner * inner) {
      return false;
    }
    const boxes = this.#boxes;
    const stack = this.#stack;
    const limit = outer * outer;
    let sides = 0;
    let size = 0;
    stack[size++] = this.#top;
    stack[size++] = 0;
    while (size > 0) {
      const index = stack[--size];
      const level = stack[--size];
      if (level === 0) {
        const d2 = this.#edgeDistance2(index, mx, my);
        if (d2 < inner * inner) {
          this.#lastViolator = index;
          return false;
        }
        if (d2 < limit) {
          sides |= this.#sideOfContact(index, mx, my, ux, uy, radius);
          if (sides === 3) {
            return false;
          }
        }
        continue;
      }
      const below = this.#levelStart[level - 1];
      const left = 2 * index;
      const a = boxDistance2(boxes, 4 * (below + left), mx, my);
      const b =
        left + 1 < this.#levelSize[level - 1]
          ? boxDistance2(boxes, 4 * (below + left + 1), mx, my)
          : Infinity;
      const first = a < b ? left + 1 : left;
      if (Math.max(a, b) < limit) {
        stack[size++] = level - 1;
        stack[size++] = first;
      }
      if (Math.min(a, b) < limit) {
        stack[size++] = level - 1;
        stack[size++] = first === left ? left + 1 : left;
      }
    }
    return true;
  }

  #edgeDistance2(e: number, mx: number, my: number): number {
    const { x, y, tx, ty, length } = this.#boundary;
    const ax = mx - x[e];
    const ay = my - y[e];
    const s = Math.min(Math.max(ax * tx[e] + ay * ty[e], 0), length[e]);
    const dx = ax - s * tx[e];
    const dy = ay - s * ty[e];
    return dx * dx + dy * dy;
  }

  /** 1 or 2 for the side of the diameter on which edge e touches, 0 at its ends. */
  #sideOfContact(e: number, mx: number, my: number, ux: number, uy: number, radius: number): number {
    const { x, y, tx, ty, length } = this.#boundary;
    const ax = x[e] - mx;
    const ay = y[e] - my;
    const s = Math.min(Math.max(-(ax * tx[e] + ay * ty[e]), 0), length[e]);
    const side = ux * (ay + s * ty[e]) - uy * (ax + s * tx[e]);
    return side > SIDE_SHARE * radius ? 1 : side < -SIDE_SHARE * radius ? 2 : 0;
  }
}

function boxDistance2(boxes: Float64Array, at: number, px: number, py: number): number {
  const dx = boxes[at] > px ? boxes[at] - px : px > boxes[at + 2] ? px - boxes[at + 2] : 0;
  const dy = boxes[at + 1] > py ? boxes[at + 1] - py : py > boxes[at + 3] ? py - boxes[at + 3] : 0;
  return dx * dx + dy * dy;
}
