import type { AxisEdge, MedialAxis } from '@pourproof/geometry';
import { adaptiveIntegral } from '../integrals/adaptive-integral.ts';

/** Totals over the contacts of one axis edge with its two sites. */
export interface ContactSpans {
  /** Length of the contacts on segment sites, mm. */
  readonly lengthMm: number;
  /** Angle of the contacts on vertex sites, as seen from them. */
  readonly turnRad: number;
}

/**
 * An integrand over contacts: per mm of a segment cell (a strip) and per radian of a vertex cell (a fan), as
 * functions of the clearance at the contact.
 */
export interface ContactIntegrand {
  readonly segment: (clearance: number) => number;
  readonly vertex: (clearance: number) => number;
  /** Clearances at which either is not smooth, in rising order. */
  readonly kinks: readonly number[];
}

/**
 * The contacts of one axis edge with a reflex vertex: t runs from `from` to `to`, backwards where rounding
 * made the cell negative.
 */
export interface VertexCell {
  readonly site: number;
  readonly from: number;
  readonly to: number;
  readonly sign: number;
  clearanceAt(t: number): number;
  /** Unit direction from the vertex into the artwork. */
  directionAt(t: number): [number, number];
}

/**
 * Below this relative difference of its clearances an axis edge is level: an integral over the clearance
 * would be rounding only.
 */
const LEVEL_CELL_REL_TOL = 1e-13;

/**
 * The two cells beside one axis edge as seen from the boundary: contacts on a segment by arc length, on a
 * vertex by angle. `load` an edge that is not secondary, then ask. u is the position along the bisector, 0
 * where the clearance is least on all of it.
 */
export class EdgeCells {
  readonly #axis: MedialAxis;
  #edge: AxisEdge;
  /** Distance from vertex to line, for a parabola; half the distance of two vertices, for their bisector. */
  #h = 0;
  /** +1 where u rises in the direction of the contacts. */
  #sign = 1;
  #dx = 0;
  #dy = 0;
  #ox = 0;
  #oy = 0;
  /** Contact length per mm along the bisector of two lines, by component. */
  #tx = 0;
  #ty = 0;

  constructor(axis: MedialAxis, edge: AxisEdge) {
    this.#axis = axis;
    this.#edge = edge;
  }

  /** Takes over the edge that was loaded last. */
  load(): void {
    const { count, x, y, tx, ty } = this.#axis.boundary;
    const { kind, left, right } = this.#edge;
    if (kind === 'lines') {
      this.#tx = tx[right] - tx[left];
      this.#ty = ty[right] - ty[left];
    } else if (kind === 'line-point') {
      const line = left < count ? left : right;
      const p = (left < count ? right : left) - count;
      [this.#dx, this.#dy, this.#ox, this.#oy] = [tx[line], ty[line], x[p], y[p]];
      this.#h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
      this.#sign = line === right ? 1 : -1;
    } else if (kind === 'points') {
      const [p, q] = [left - count, right - count];
      const [vx, vy] = [x[q] - x[p], y[q] - y[p]];
      const d = Math.hypot(vx, vy);
      [this.#dx, this.#dy, this.#ox, this.#oy] = [-vy / d, vx / d, (x[p] + x[q]) / 2, (y[p] + y[q]) / 2];
      this.#h = d / 2;
      this.#sign = 1;
    }
  }

  /** Contacts of the part of the edge with a clearance from a to b. */
  spans(a: number, b: number): ContactSpans {
    const [ax, ay, bx, by] = this.#ends(a, b);
    if (this.#edge.kind === 'lines') {
      return { lengthMm: (bx - ax) * this.#tx + (by - ay) * this.#ty, turnRad: 0 };
    }
    const [ua, ub] = [this.#position(ax, ay), this.#position(bx, by)];
    const turnRad = 2 * this.#sign * (Math.atan(ub / this.#h) - Math.atan(ua / this.#h));
    return { lengthMm: this.#edge.kind === 'points' ? 0 : this.#sign * (ub - ua), turnRad };
  }

  /**
   * Integral over the contacts of the part of the edge with a clearance from a to b; exact to rounding where
   * both integrands are quadratic.
   */
  integral(a: number, b: number, of: ContactIntegrand, tolerance: number): number {
    if (b <= a) {
      return this.#smooth(a, b, of, tolerance);
    }
    let sum = 0;
    let from = a;
    for (const kink of [...of.kinks, b]) {
      const to = Math.min(kink, b);
      if (to > from) {
        sum += this.#smooth(from, to, of, tolerance);
        from = to;
      }
    }
    return sum;
  }

  /** The vertex cells of the part of the edge with a clearance from a to b: none, one or two. */
  vertexCells(a: number, b: number): VertexCell[] {
    const { kind, left, right } = this.#edge;
    const [ax, ay, bx, by] = this.#ends(a, b);
    const [h, dx, dy] = [this.#h, this.#dx, this.#dy];
    const [ua, ub] = [this.#position(ax, ay), this.#position(bx, by)];
    if (kind === 'line-point') {
      const site = left < this.#axis.boundary.count ? right : left;
      return [
        {
          site,
          from: 2 * Math.atan(ua / h),
          to: 2 * Math.atan(ub / h),
          sign: this.#sign,
          clearanceAt: (t) => h / (1 + Math.cos(t)),
          directionAt: (t) => [Math.sin(t) * dx + Math.cos(t) * dy, Math.sin(t) * dy - Math.cos(t) * dx],
        },
      ];
    }
    if (kind !== 'points') {
      return [];
    }
    // with y up, the left vertex is to the left of rising u
    return [left, right].map((site, side) => {
      const [ex, ey] = side === 0 ? [dy, -dx] : [-dy, dx];
      return {
        site,
        from: Math.atan(ua / h),
        to: Math.atan(ub / h),
        sign: this.#sign,
        clearanceAt: (t) => h / Math.cos(t),
        directionAt: (t) => [Math.cos(t) * ex + Math.sin(t) * dx, Math.cos(t) * ey + Math.sin(t) * dy],
      };
    });
  }

  /** ∫ over the clearance from a to b of the angle between both contacts at the centre of the disc. */
  sweepIntegral(a: number, b: number, tolerance: number): number {
    const { kind, left, right } = this.#edge;
    if (kind === 'lines') {
      const { tx, ty } = this.#axis.boundary;
      const cross = tx[left] * ty[right] - ty[left] * tx[right];
      return (b - a) * Math.atan2(Math.abs(cross), tx[left] * tx[right] + ty[left] * ty[right]);
    }
    const h = this.#h;
    const [ax, ay, bx, by] = this.#ends(a, b);
    const [ua, ub] = [this.#position(ax, ay), this.#position(bx, by)].map(Math.abs).sort((p, q) => p - q);
    const riseAt = kind === 'points' ? (u: number) => u / Math.hypot(u, h) : (u: number) => u / h;
    const along = (u: number): number => (Math.PI - 2 * Math.atan(u / h)) * riseAt(u);
    return adaptiveIntegral(along, ua, ub, tolerance).value;
  }

  #smooth(a: number, b: number, { segment, vertex }: ContactIntegrand, tolerance: number): number {
    const [ax, ay, bx, by] = this.#ends(a, b);
    if (this.#edge.kind === 'lines') {
      const along = (bx - ax) * this.#tx + (by - ay) * this.#ty;
      if (b - a <= LEVEL_CELL_REL_TOL * b) {
        return along * segment(b);
      }
      const share = along === 0 ? 0 : tolerance / Math.abs(along);
      return along * adaptiveIntegral((t) => segment(a + t * (b - a)), 0, 1, share).value;
    }
    const h = this.#h;
    const [ua, ub] = [this.#position(ax, ay), this.#position(bx, by)];
    if (this.#edge.kind === 'points') {
      const turned = signed((t) => vertex(h / Math.cos(t)), Math.atan(ua / h), Math.atan(ub / h), tolerance);
      return 2 * this.#sign * turned;
    }
    const segments = signed((u) => segment((u * u + h * h) / (2 * h)), ua, ub, tolerance);
    const vertices = signed(
      (t) => vertex(h / (1 + Math.cos(t))),
      2 * Math.atan(ua / h),
      2 * Math.atan(ub / h),
      tolerance,
    );
    return this.#sign * (segments + vertices);
  }

  #ends(a: number, b: number): [number, number, number, number] {
    const edge = this.#edge;
    edge.at(a);
    const [ax, ay] = [edge.x, edge.y];
    edge.atHigh(b);
    return [ax, ay, edge.x, edge.y];
  }

  #position(x: number, y: number): number {
    return (x - this.#ox) * this.#dx + (y - this.#oy) * this.#dy;
  }
}

function signed(f: (x: number) => number, a: number, b: number, tolerance: number): number {
  return b >= a ? adaptiveIntegral(f, a, b, tolerance).value : -adaptiveIntegral(f, b, a, tolerance).value;
}
