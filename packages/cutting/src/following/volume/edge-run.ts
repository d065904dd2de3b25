import { type AxisEdge, type MedialAxis, parabolaArc } from '@pourproof/geometry';

/**
 * One axis edge, parametrised from its low to its high end by position: mm along it where it is straight, mm
 * along the directrix where it is a parabola arc. `load` an edge that is not secondary, then ask.
 */
export class EdgeRun {
  readonly #axis: MedialAxis;
  #kind: AxisEdge['kind'] = 'segments';
  /** Least clearance on a bisector of two vertices; twice the least on that of an edge and a vertex. */
  #h = 1;
  #r0 = 0;
  #r1 = 0;
  /** Positions of the ends, in rising order. */
  from = 0;
  to = 0;
  /** Clearance at the position asked for last, mm. */
  clearance = 0;
  /** Clearance gained there per mm of length, 0 … 1. */
  rise = 0;
  /** Length per unit of position there. */
  pace = 1;

  constructor(axis: MedialAxis) {
    this.#axis = axis;
  }

  /** Whether the edge is an arc of a parabola. */
  get isParabola(): boolean {
    return this.#kind === 'segment-vertex';
  }

  load(edge: AxisEdge): void {
    const { count, x, y, tx, ty } = this.#axis.boundary;
    const { kind, left, right, x0, y0, x1, y1 } = edge;
    this.#kind = kind;
    this.#r0 = edge.r0;
    this.#r1 = edge.r1;
    if (kind === 'segments') {
      this.from = 0;
      this.to = Math.hypot(x1 - x0, y1 - y0);
      return;
    }
    let [ox, oy, dx, dy] = [0, 0, 0, 0];
    if (kind === 'vertices') {
      const [p, q] = [left - count, right - count];
      const [vx, vy] = [x[q] - x[p], y[q] - y[p]];
      this.#h = Math.hypot(vx, vy) / 2;
      [ox, oy, dx, dy] = [(x[p] + x[q]) / 2, (y[p] + y[q]) / 2, -vy / (2 * this.#h), vx / (2 * this.#h)];
    } else {
      const line = left < count ? left : right;
      const p = (left < count ? right : left) - count;
      this.#h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
      [ox, oy, dx, dy] = [x[p], y[p], tx[line], ty[line]];
    }
    // clearance rises symmetrically away from position 0
    const low = Math.abs((x0 - ox) * dx + (y0 - oy) * dy);
    const high = Math.abs((x1 - ox) * dx + (y1 - oy) * dy);
    this.from = Math.min(low, high);
    this.to = high;
  }

  /** Sets `clearance`, `rise` and `pace` for a position. */
  at(position: number): void {
    const h = this.#h;
    if (this.#kind === 'vertices') {
      this.clearance = Math.sqrt(position * position + h * h);
      this.rise = position / this.clearance;
      this.pace = 1;
    } else if (this.#kind === 'segment-vertex') {
      const t = position / h;
      this.clearance = (h / 2) * (1 + t * t);
      this.pace = Math.sqrt(1 + t * t);
      this.rise = t / this.pace;
    } else {
      // on edges as short as rounding the clearance may seem to fall, or to rise faster than the length
      this.rise = this.to > 0 ? Math.min(1, Math.max(0, (this.#r1 - this.#r0) / this.to)) : 0;
      this.clearance = this.#r0 + this.rise * position;
      this.pace = 1;
    }
  }

  /** Position of a clearance, clamped to the ends. */
  positionOf(clearance: number): number {
    if (clearance <= this.#r0 || clearance >= this.#r1) {
      return clearance <= this.#r0 ? this.from : this.to;
    }
    const h = this.#h;
    let at = ((clearance - this.#r0) / (this.#r1 - this.#r0)) * this.to;
    if (this.#kind === 'vertices') {
      at = Math.sqrt(Math.max(0, (clearance - h) * (clearance + h)));
    } else if (this.#kind === 'segment-vertex') {
      at = Math.sqrt(Math.max(0, h * (2 * clearance - h)));
    }
    return Math.min(this.to, Math.max(this.from, at));
  }

  /** Length of the edge between two positions, mm. */
  lengthBetween(from: number, to: number): number {
    return this.#kind === 'segment-vertex' ? parabolaArc(this.#h, from, to) : to - from;
  }

  /** Angle between the directions of the edge at a position and at 0; 0 where it is straight. */
  turnAt(position: number): number {
    return this.#kind === 'segment-vertex' ? Math.atan(position / this.#h) : 0;
  }

  /**
   * Rise, per mm of length, of the sine of the arc tangent of the sink rate of a ball that touches both
   * walls, 1/mm; it increases along the edge.
   */
  sineRate(position: number, ball: number): number {
    this.at(position);
    const h = this.#h;
    if (this.#kind === 'vertices') {
      return 1 / Math.sqrt(Math.max(0, (ball - h) * (ball + h)));
    }
    if (this.#kind === 'segment-vertex') {
      const square = (position / h) ** 2;
      const far = Math.max(0, ball * ball - (h * h * (1 + square)) / 4);
      return (1 + square / (1 + square) + (square * h * h) / (4 * far)) / (2 * Math.sqrt(far));
    }
    const far = Math.max(0, ball * ball - this.clearance ** 2 * (1 - this.rise ** 2));
    return this.rise === 0 ? 0 : (this.rise * ball) ** 2 / (far * Math.sqrt(far));
  }

  /** Curvature at a position, 1/mm; it decreases along the edge. */
  bendAt(position: number): number {
    return this.#kind === 'segment-vertex' ? Math.cos(this.turnAt(position)) ** 3 / this.#h : 0;
  }
}
