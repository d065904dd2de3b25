import { pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import {
  distanceBesideLines,
  distanceBesideParabola,
  distanceBesideVertices,
  turnBesideVertex,
} from './cell-forms.ts';
import { AREA, type CellSums, LENGTH, TURN, VOLUME } from './cell-sums.ts';
import { isSecondary } from './is-secondary.ts';
import { parabolaArc, parabolaSweep } from './parabola-length.ts';

/**
 * The sites of an axis edge: two lines, a line and a vertex (the bisector is a parabola), two vertices; or it
 * is secondary, with no area beside it.
 */
export type EdgeKind = 'segments' | 'segment-vertex' | 'vertices' | 'secondary';

/**
 * Closed forms on one axis edge at a time and on the two cells beside it, segment cells or vertex cells.
 * `load` an edge, then ask. Coordinates are relative to the axis' origin, lengths in mm.
 */
export class AxisEdge {
  readonly #axis: MedialAxis;
  kind: EdgeKind = 'secondary';
  left = 0;
  right = 0;
  /** Clearance at the low and the high end. */
  r0 = 0;
  r1 = 0;
  x0 = 0;
  y0 = 0;
  x1 = 0;
  y1 = 0;
  /**
   * Distance from the vertex to the line, or half the distance between the vertices: twice or once the least
   * clearance of the whole bisector.
   */
  h = 0;
  /**
   * Unit direction of the bisector's own axis: that of the line, or from one vertex to the other turned by a
   * quarter from +x to +y.
   */
  ux = 1;
  uy = 0;
  /**
   * The point where u is 0 on that axis: the vertex, whose foot on the line it is, or the middle of both
   * vertices.
   */
  ox = 0;
  oy = 0;
  /**
   * 1 where the contacts go along that axis from the low end to the high end as they do along the boundary,
   * else -1.
   */
  side: 1 | -1 = 1;
  /**
   * Positions of both ends along the bisector's own axis, rising: 0 where the clearance of the whole bisector
   * is smallest.
   */
  #u0 = 0;
  #u1 = 0;
  /** -1 where the cells beside the edge are negative, which rounding causes on edges as short as itself. */
  #sign = 1;
  /** The point that was asked for last. */
  x = 0;
  y = 0;
  /** Clearance there, after `atShare`. */
  clearance = 0;

  constructor(axis: MedialAxis) {
    this.#axis = axis;
  }

  /** Whether edge e is secondary, between a segment and one of its own end vertices. */
  isSecondary(e: number): boolean {
    return isSecondary(this.#axis, e);
  }

  /** Loads edge e. Whatever walks many edges polls by that. */
  load(e: number): void {
    pollStep();
    const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR, boundary } = this.#axis;
    const from = edgeFrom[e];
    const to = edgeTo[e];
    this.left = edgeLeft[e];
    this.right = edgeRight[e];
    this.r0 = nodeR[from];
    this.r1 = nodeR[to];
    this.x0 = nodeX[from];
    this.y0 = nodeY[from];
    this.x1 = nodeX[to];
    this.y1 = nodeY[to];
    const n = boundary.count;
    const isBare = isSecondary(this.#axis, e);
    if (isBare || (this.left < n && this.right < n)) {
      this.kind = isBare ? 'secondary' : 'segments';
      this.#u0 = this.r0;
      this.#u1 = this.r1;
    } else if (this.left >= n && this.right >= n) {
      this.#loadVertices(this.left - n, this.right - n);
    } else if (this.left < n) {
      this.#loadSegmentVertex(this.left, this.right - n);
    } else {
      this.#loadSegmentVertex(this.right, this.left - n);
    }
  }

  #loadVertices(p: number, q: number): void {
    const { x, y } = this.#axis.boundary;
    this.kind = 'vertices';
    this.ox = (x[p] + x[q]) / 2;
    this.oy = (y[p] + y[q]) / 2;
    const vx = x[q] - x[p];
    const vy = y[q] - y[p];
    const d = Math.sqrt(vx * vx + vy * vy);
    this.h = d / 2;
    this.ux = -vy / d;
    this.uy = vx / d;
    this.side = 1;
    this.#orient();
  }

  #loadSegmentVertex(line: number, p: number): void {
    const { x, y, tx, ty } = this.#axis.boundary;
    this.kind = 'segment-vertex';
    this.ux = tx[line];
    this.uy = ty[line];
    this.ox = x[p];
    this.oy = y[p];
    this.h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
    this.side = line === this.right ? 1 : -1;
    this.#orient();
  }

  /** Makes u rise from the low to the high end. */
  #orient(): void {
    const u0 = this.along(this.x0, this.y0);
    const u1 = this.along(this.x1, this.y1);
    const isTurned = u1 < u0;
    this.#sign = isTurned ? -this.side : this.side;
    this.#u0 = isTurned ? -u0 : u0;
    this.#u1 = isTurned ? -u1 : u1;
  }

  /** Position of a point along the bisector's own axis, as `ux`, `uy` run. */
  along(x: number, y: number): number {
    return (x - this.ox) * this.ux + (y - this.oy) * this.uy;
  }

  /** Position along the bisector's own axis at which the clearance is r, clamped to the edge. */
  #position(r: number): number {
    if (this.kind === 'segments' || this.kind === 'secondary') {
      return r;
    }
    const h = this.h;
    const u =
      this.kind === 'vertices'
        ? Math.sqrt(Math.max(0, (r - h) * (r + h)))
        : Math.sqrt(Math.max(0, h * (2 * r - h)));
    return Math.min(Math.max(u, this.#u0), this.#u1);
  }

  /**
   * Sets `x`, `y` to the high end if its clearance is at most r, else to the point of the edge with clearance
   * r.
   */
  atHigh(r: number): void {
    if (r >= this.r1) {
      this.x = this.x1;
      this.y = this.y1;
    } else {
      this.at(r);
    }
  }

  /**
   * Sets `x`, `y` to the point of the edge with clearance r, or to the nearer end; to the low end of a level
   * edge.
   */
  at(r: number): void {
    if (r <= this.r0) {
      this.x = this.x0;
      this.y = this.y0;
      return;
    }
    if (r >= this.r1) {
      this.x = this.x1;
      this.y = this.y1;
      return;
    }
    const u = this.#position(r);
    const span = this.#u1 - this.#u0;
    const t = span > 0 ? (u - this.#u0) / span : 1;
    this.x = this.x0 + t * (this.x1 - this.x0);
    this.y = this.y0 + t * (this.y1 - this.y0);
    if (this.kind === 'segment-vertex') {
      this.#bend(u);
    }
  }

  /** Sets `x`, `y` and `clearance` to the point at share t, 0 … 1, from the low to the high end. */
  atShare(t: number): void {
    const h = this.h;
    const u = this.#u0 + t * (this.#u1 - this.#u0);
    this.x = this.x0 + t * (this.x1 - this.x0);
    this.y = this.y0 + t * (this.y1 - this.y0);
    this.clearance = this.r0 + t * (this.r1 - this.r0);
    if (this.kind === 'vertices') {
      this.clearance = Math.sqrt(u * u + h * h);
    } else if (this.kind === 'segment-vertex') {
      this.clearance = (u * u + h * h) / (2 * h);
      this.#bend(u);
    }
  }

  /** How fast the clearance rises along the edge at a share from the low end, mm a mm. */
  slopeAt(share: number): number {
    if (this.kind === 'segments' || this.kind === 'secondary') {
      return (this.r1 - this.r0) / Math.hypot(this.x1 - this.x0, this.y1 - this.y0);
    }
    // either bisector is a conic about the vertex: the slope is the sine of half the turn of its normal
    const u = this.#u0 + share * (this.#u1 - this.#u0);
    return u / Math.sqrt(u * u + this.h * this.h);
  }

  /** Share of the edge, from its low end, at which the clearance is r; 1 on a level edge. */
  shareOf(r: number): number {
    const span = this.#u1 - this.#u0;
    if (r >= this.r1 || span <= 0) {
      return 1;
    }
    return r <= this.r0 ? 0 : (this.#position(r) - this.#u0) / span;
  }

  /** Moves `x`, `y` from the chord onto the arc of the parabola, which lies on the side of the line. */
  #bend(u: number): void {
    const { count, tx, ty } = this.#axis.boundary;
    const line = this.left < count ? this.left : this.right;
    const sag = ((u - this.#u0) * (this.#u1 - u)) / (2 * this.h);
    this.x += sag * ty[line];
    this.y -= sag * tx[line];
  }

  /** Length of the edge between two shares from the low end. */
  lengthBetween(from: number, to: number): number {
    if (this.kind !== 'segment-vertex') {
      const dx = this.x1 - this.x0;
      const dy = this.y1 - this.y0;
      return (to - from) * Math.sqrt(dx * dx + dy * dy);
    }
    const span = this.#u1 - this.#u0;
    return this.#arcLength(this.#u0 + from * span, this.#u0 + to * span);
  }

  /** Integral of the clearance along the edge between two shares, mm². */
  sweptBetween(from: number, to: number): number {
    const span = this.#u1 - this.#u0;
    const a = this.#u0 + from * span;
    const b = this.#u0 + to * span;
    if (this.kind === 'segment-vertex') {
      return parabolaSweep(this.h, a, b);
    }
    if (this.kind === 'vertices') {
      // the distance to a vertex grows along the bisector as the parabola of that width gets longer
      return this.h * parabolaArc(this.h, a, b);
    }
    const middle = this.r0 + ((from + to) / 2) * (this.r1 - this.r0);
    return this.lengthBetween(from, to) * middle;
  }

  /** Length of the parabola arc between two positions. */
  #arcLength(from: number, to: number): number {
    return parabolaArc(this.h, from, to);
  }

  /** Length of the contacts on both lines beside the part with clearance from a to b. */
  #alongStrips(a: number, b: number): number {
    const { tx, ty } = this.#axis.boundary;
    this.at(a);
    const ax = this.x;
    const ay = this.y;
    this.atHigh(b);
    // contacts run against the boundary on the left, along it on the right
    return (
      (this.x - ax) * (tx[this.right] - tx[this.left]) + (this.y - ay) * (ty[this.right] - ty[this.left])
    );
  }

  /** Angle of the contacts on vertices between two positions along the bisector. */
  #turnBetween(from: number, to: number): number {
    return turnBesideVertex(from / this.h, to / this.h);
  }

  /**
   * Area of both cells beside the part of the edge with clearance from a to b, less a strip of the given
   * width along the boundary.
   */
  area(a: number, b: number, strip: number): number {
    if (this.kind === 'secondary') {
      return 0;
    }
    if (this.kind === 'segments') {
      return (this.#alongStrips(a, b) * (a + b - 2 * strip)) / 2;
    }
    this.at(a);
    const ax = this.x;
    const ay = this.y;
    this.atHigh(b);
    const vx = this.x - ax;
    const vy = this.y - ay;
    const h = this.h;
    const ua = a <= this.r0 ? this.#u0 : this.#position(a);
    const ub = b >= this.r1 ? this.#u1 : this.#position(b);
    const du = ub - ua;
    if (this.kind === 'vertices') {
      return (
        this.#sign * (h * du - (strip > 0 ? strip * strip * (Math.atan(ub / h) - Math.atan(ua / h)) : 0))
      );
    }
    const fan = Math.abs((ax - this.ox) * vy - (ay - this.oy) * vx) / 2;
    const angle = strip > 0 ? 2 * (Math.atan(ub / h) - Math.atan(ua / h)) : 0;
    return this.#sign * (du * ((a + b) / 2 - strip) + fan - (strip * strip * angle) / 2);
  }

  /**
   * Integral of the distance to the boundary over both cells beside the part of the edge with clearance from
   * a to b; mm³.
   */
  #distanceIntegral(a: number, b: number): number {
    if (this.kind === 'segments') {
      return distanceBesideLines(this.#alongStrips(a, b), a, b);
    }
    const h = this.h;
    const s = (a <= this.r0 ? this.#u0 : this.#position(a)) / h;
    const t = (b >= this.r1 ? this.#u1 : this.#position(b)) / h;
    return (
      this.#sign *
      (this.kind === 'vertices' ? distanceBesideVertices(h, s, t) : distanceBesideParabola(h, s, t))
    );
  }

  /** Adds both cells beside the part of the edge with clearance from a to b to the sums. */
  addCells(a: number, b: number, sums: CellSums): void {
    if (this.kind === 'secondary') {
      return;
    }
    sums[AREA] += this.area(a, b, 0);
    sums[VOLUME] += this.#distanceIntegral(a, b);
    if (this.kind === 'segments') {
      sums[LENGTH] += this.#alongStrips(a, b);
      return;
    }
    const s = a <= this.r0 ? this.#u0 : this.#position(a);
    const t = b >= this.r1 ? this.#u1 : this.#position(b);
    sums[LENGTH] += this.kind === 'vertices' ? 0 : this.#sign * (t - s);
    sums[TURN] += this.#sign * this.#turnBetween(s, t);
  }

  /** Length of the part of the edge with clearance from a to b. */
  length(a: number, b: number): number {
    this.at(a);
    const ax = this.x;
    const ay = this.y;
    this.atHigh(b);
    if (this.kind !== 'segment-vertex') {
      const dx = this.x - ax;
      const dy = this.y - ay;
      return Math.sqrt(dx * dx + dy * dy);
    }
    const ua = a <= this.r0 ? this.#u0 : this.#position(a);
    const ub = b >= this.r1 ? this.#u1 : this.#position(b);
    return this.#arcLength(ua, ub);
  }
}
