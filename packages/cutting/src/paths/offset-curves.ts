import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { COINCIDENT_REL_TOL, invariant, pollStep } from '@pourproof/plane';

/**
 * A component of an offset curve, the points with one clearance: closed, or open between two points where the
 * axis passes `wideMm`.
 */
export interface OffsetCurve {
  /** Clearance of its points, mm. */
  readonly clearance: number;
  /** `[x, y, bulge, …]`, relative to the axis' origin; a bulge belongs to the move to the next point. */
  readonly points: number[];
  /** Axis edges that pass `wideMm` where the curve starts and ends; -1 for a closed curve. */
  readonly startEdge: number;
  readonly endEdge: number;
  /** A half-edge beside the curve, not of a secondary edge. */
  readonly half: number;
}

/**
 * Traces offset curves around the axis, level by level. Only beside parts of the axis with a clearance below
 * `wideMm`; if that is Infinity, all curves are closed.
 */
export class OffsetTracer {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;
  readonly #wide: number;
  readonly #closeness: number;
  readonly #isSeen: Uint8Array;
  #seenMark = 0;
  #points: number[] = [];
  #site = 0;
  #stepsLeft = 0;
  #level = 0;
  #curve = 0;
  /** OffsetCurve beside each half-edge at the level traced last, for half-edges that reach that level. */
  readonly curveOf: Int32Array;
  /** Index, in that curve, of the point at which the move beside the half-edge starts. */
  readonly moveOf: Int32Array;

  constructor(axis: MedialAxis, wideMm: number) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#wide = wideMm;
    this.#closeness = axis.boundary.extent * COINCIDENT_REL_TOL;
    const halfCount = axis.nextHalf.length;
    this.#isSeen = new Uint8Array(halfCount);
    this.curveOf = new Int32Array(halfCount).fill(-1);
    this.moveOf = new Int32Array(halfCount).fill(-1);
  }

  /**
   * The curves at a clearance above 0, numbered from `firstCurve` on. `edges` contains at least all axis
   * edges that rise to that clearance or beyond and start below `wideMm`.
   */
  trace(clearance: number, edges: ArrayLike<number>, firstCurve: number): OffsetCurve[] {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    this.#seenMark = this.#seenMark === 255 ? 1 : this.#seenMark + 1;
    if (this.#seenMark === 1) {
      this.#isSeen.fill(0);
    }
    this.#level = clearance;
    this.#stepsLeft = this.#isSeen.length;
    this.#curve = firstCurve;
    const curves: OffsetCurve[] = [];
    const wide = this.#wide;
    // open curves start at a wide place; what is left unseen after them is closed
    for (let i = 0; wide < Infinity && i < edges.length; i++) {
      pollStep();
      const e = edges[i];
      if (nodeR[edgeFrom[e]] < wide && nodeR[edgeTo[e]] >= wide && !this.#edge.isSecondary(e)) {
        curves.push(this.#traceOpen(e));
        this.#curve++;
      }
    }
    for (let i = 0; i < edges.length; i++) {
      pollStep();
      const e = edges[i];
      const high = nodeR[edgeTo[e]];
      if (high >= clearance && high < wide && !this.#edge.isSecondary(e)) {
        for (const h of [2 * e, 2 * e + 1]) {
          if (this.#isSeen[h] !== this.#seenMark) {
            curves.push(this.#traceClosed(h));
            this.#curve++;
          }
        }
      }
    }
    return curves;
  }

  /** Traces the curve that leaves the wide place on edge e along its left wall. */
  #traceOpen(e: number): OffsetCurve {
    const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeR } = this.#axis;
    this.#points = [];
    this.#startAtWide(e, edgeLeft[e]);
    let h = 2 * e + 1;
    for (;;) {
      h = this.#step(h);
      const at = h >> 1;
      // up again to a wide place
      if (
        (h & 1) === 0 &&
        nodeR[edgeFrom[at]] < this.#wide &&
        nodeR[edgeTo[at]] >= this.#wide &&
        !this.#edge.isSecondary(at)
      ) {
        this.#mark(h);
        const [x, y] = this.#contactAtWide(at, edgeRight[at]);
        this.#push(x, y);
        return {
          clearance: this.#level,
          points: this.#points,
          startEdge: e,
          endEdge: at,
          half: 2 * e + 1,
        };
      }
    }
  }

  /** Traces the closed curve along half-edge h. */
  #traceClosed(h: number): OffsetCurve {
    const { edgeLeft, edgeRight } = this.#axis;
    this.#points = [];
    this.#site = (h & 1) === 1 ? edgeLeft[h >> 1] : edgeRight[h >> 1];
    const early: number[] = [];
    let at = h;
    do {
      if (this.#points.length === 0) {
        early.push(at);
      }
      at = this.#step(at);
    } while (at !== h);
    this.#close();
    const last = this.#points.length / 3 - 1;
    for (const half of early) {
      this.moveOf[half] = last;
    }
    return { clearance: this.#level, points: this.#points, startEdge: -1, endEdge: -1, half: h };
  }

  #mark(h: number): void {
    this.#isSeen[h] = this.#seenMark;
    this.curveOf[h] = this.#curve;
    this.moveOf[h] = this.#points.length / 3 - 1;
  }

  /**
   * Marks half-edge h, adds a point if the curve changes to another site there, and returns the half-edge
   * after it.
   */
  #step(h: number): number {
    const { edgeFrom, edgeLeft, edgeRight, nextHalf, nodeR } = this.#axis;
    invariant(this.#stepsLeft-- > 0, 'a walk at one clearance comes back to where it began');
    this.#mark(h);
    const e = h >> 1;
    if ((h & 1) === 0) {
      return nextHalf[h];
    }
    if (this.#edge.isSecondary(e)) {
      this.#passSecondary(edgeLeft[e], edgeRight[e]);
      return 2 * e;
    }
    if (nodeR[edgeFrom[e]] < this.#level) {
      // the axis falls below the level here: over to the other wall
      this.#edge.load(e);
      this.#edge.at(this.#level);
      this.#push(this.#edge.x, this.#edge.y);
      this.#site = edgeRight[e];
      return 2 * e;
    }
    return nextHalf[h];
  }

  /** From an edge to its own end vertex or back. */
  #passSecondary(left: number, right: number): void {
    const { count, x, y, tx, ty } = this.#axis.boundary;
    const line = left < count ? left : right;
    const p = (left < count ? right : left) - count;
    this.#push(x[p] - this.#level * ty[line], y[p] + this.#level * tx[line]);
    this.#site = right;
  }

  #startAtWide(e: number, site: number): void {
    const [x, y] = this.#contactAtWide(e, site);
    this.#points.push(x, y, 0);
    this.#site = site;
  }

  #contactAtWide(e: number, site: number): [number, number] {
    this.#edge.load(e);
    this.#edge.at(this.#wide);
    return offsetPoint(this.#axis, site, this.#edge.x, this.#edge.y, this.#level);
  }

  /** Ends the move along the current site at a point; moves without length are left out. */
  #push(x: number, y: number): void {
    const points = this.#points;
    const n = points.length;
    if (n > 0) {
      const dx = x - points[n - 3];
      const dy = y - points[n - 2];
      if (Math.abs(dx) <= this.#closeness && Math.abs(dy) <= this.#closeness) {
        return;
      }
      points[n - 1] = this.#bulge(points[n - 3], points[n - 2], x, y);
    }
    points.push(x, y, 0);
  }

  /** Ends the last move at the first point. */
  #close(): void {
    const points = this.#points;
    this.#push(points[0], points[1]);
    if (points.length > 3) {
      const n = points.length;
      const isDoubled =
        Math.abs(points[n - 3] - points[0]) <= this.#closeness &&
        Math.abs(points[n - 2] - points[1]) <= this.#closeness;
      if (isDoubled) {
        points.length -= 3;
      }
    }
  }

  /** Bulge of a move along the current site: an arc around a vertex, straight along an edge. */
  #bulge(ax: number, ay: number, bx: number, by: number): number {
    const { count, x, y } = this.#axis.boundary;
    if (this.#site < count) {
      return 0;
    }
    const p = this.#site - count;
    const ux = ax - x[p];
    const uy = ay - y[p];
    const vx = bx - x[p];
    const vy = by - y[p];
    return Math.tan(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 4);
  }
}

/** The point at distance `clearance` from a site, towards a point of the axis beside it. */
export function offsetPoint(
  axis: MedialAxis,
  site: number,
  ax: number,
  ay: number,
  clearance: number,
): [number, number] {
  const { count, x, y, tx, ty } = axis.boundary;
  if (site < count) {
    const s = (ax - x[site]) * tx[site] + (ay - y[site]) * ty[site];
    return [x[site] + s * tx[site] - clearance * ty[site], y[site] + s * ty[site] + clearance * tx[site]];
  }
  const p = site - count;
  const dx = ax - x[p];
  const dy = ay - y[p];
  const share = clearance / Math.hypot(dx, dy);
  return [x[p] + share * dx, y[p] + share * dy];
}
