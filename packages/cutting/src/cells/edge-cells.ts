import { type AxisEdge, angleBetween, type MedialAxis, turnBesideVertex } from '@pourproof/geometry';
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
  /** Whether the other side is a straight wall; else it is a vertex. */
  readonly isBesideWall: boolean;
  /** Distance of the bisector's apex from the wall, or half of that between the vertices, mm. */
  readonly h: number;
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
 * vertex by angle. Load an edge that is not secondary into the `AxisEdge`, then ask: the bisector's h, u and
 * side are described there.
 */
export class EdgeCells {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;

  constructor(axis: MedialAxis, edge: AxisEdge) {
    this.#axis = axis;
    this.#edge = edge;
  }

  /** Contacts of the part of the edge with a clearance from a to b. */
  spans(a: number, b: number): ContactSpans {
    const [ax, ay, bx, by] = this.#ends(a, b);
    if (this.#edge.kind === 'segments') {
      return { lengthMm: this.#alongLines(ax, ay, bx, by), turnRad: 0 };
    }
    const [ua, ub] = [this.#edge.along(ax, ay), this.#edge.along(bx, by)];
    const { h, kind, side } = this.#edge;
    const turnRad = side * turnBesideVertex(ua / h, ub / h);
    return { lengthMm: kind === 'vertices' ? 0 : side * (ub - ua), turnRad };
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

  /** The {@link integral} of what is linear in the clearance between kinks on segments, and 0 on vertices: exact. */
  linearIntegral(
    a: number,
    b: number,
    segment: (clearance: number) => number,
    kinks: readonly number[],
  ): number {
    if (this.#edge.kind === 'vertices') {
      return 0;
    }
    let sum = 0;
    let from = a;
    for (let k = 0; k <= kinks.length; k++) {
      const to = k < kinks.length ? Math.min(kinks[k], b) : b;
      if (to > from || (b <= a && k === kinks.length)) {
        sum += this.#linear(from, to, segment);
        from = to;
      }
    }
    return sum;
  }

  #linear(a: number, b: number, segment: (clearance: number) => number): number {
    const edge = this.#edge;
    edge.at(a);
    const { x: ax, y: ay } = edge;
    edge.atHigh(b);
    if (edge.kind === 'segments') {
      return (
        this.#alongLines(ax, ay, edge.x, edge.y) * segment(b - a <= LEVEL_CELL_REL_TOL * b ? b : (a + b) / 2)
      );
    }
    return edge.side * this.#quadratic(segment, edge.along(ax, ay), edge.along(edge.x, edge.y));
  }

  /** The vertex cells of the part of the edge with a clearance from a to b: none, one or two. */
  vertexCells(a: number, b: number): VertexCell[] {
    const { kind, left, right } = this.#edge;
    const [ax, ay, bx, by] = this.#ends(a, b);
    const { h, ux: dx, uy: dy } = this.#edge;
    const [ua, ub] = [this.#edge.along(ax, ay), this.#edge.along(bx, by)];
    if (kind === 'segment-vertex') {
      const site = left < this.#axis.boundary.count ? right : left;
      return [
        {
          site,
          from: 2 * Math.atan(ua / h),
          to: 2 * Math.atan(ub / h),
          sign: this.#edge.side,
          isBesideWall: true,
          h,
          clearanceAt: (t) => h / (1 + Math.cos(t)),
          directionAt: (t) => [Math.sin(t) * dx + Math.cos(t) * dy, Math.sin(t) * dy - Math.cos(t) * dx],
        },
      ];
    }
    if (kind !== 'vertices') {
      return [];
    }
    // with y up, the left vertex is to the left of rising u
    return [left, right].map((site, side) => {
      const [ex, ey] = side === 0 ? [dy, -dx] : [-dy, dx];
      return {
        site,
        from: Math.atan(ua / h),
        to: Math.atan(ub / h),
        sign: this.#edge.side,
        isBesideWall: false,
        h,
        clearanceAt: (t) => h / Math.cos(t),
        directionAt: (t) => [Math.cos(t) * ex + Math.sin(t) * dx, Math.cos(t) * ey + Math.sin(t) * dy],
      };
    });
  }

  /** ∫ over the clearance from a to b of the angle between both contacts at the centre of the disc. */
  sweepIntegral(a: number, b: number, tolerance: number): number {
    const { kind, left, right } = this.#edge;
    if (kind === 'segments') {
      const { tx, ty } = this.#axis.boundary;
      return (b - a) * angleBetween(tx[left], ty[left], tx[right], ty[right]);
    }
    const h = this.#edge.h;
    const [ax, ay, bx, by] = this.#ends(a, b);
    const [ua, ub] = [this.#edge.along(ax, ay), this.#edge.along(bx, by)].map(Math.abs).sort((p, q) => p - q);
    const riseAt = kind === 'vertices' ? (u: number) => u / Math.hypot(u, h) : (u: number) => u / h;
    const along = (u: number): number => (Math.PI - 2 * Math.atan(u / h)) * riseAt(u);
    return adaptiveIntegral(along, ua, ub, tolerance).value;
  }

  #smooth(a: number, b: number, of: ContactIntegrand, tolerance: number): number {
    const { segment, vertex } = of;
    const [ax, ay, bx, by] = this.#ends(a, b);
    if (this.#edge.kind === 'segments') {
      const along = this.#alongLines(ax, ay, bx, by);
      if (b - a <= LEVEL_CELL_REL_TOL * b) {
        return along * segment(b);
      }
      const share = along === 0 ? 0 : tolerance / Math.abs(along);
      return along * adaptiveIntegral((t) => segment(a + t * (b - a)), 0, 1, share).value;
    }
    const h = this.#edge.h;
    const [ua, ub] = [this.#edge.along(ax, ay), this.#edge.along(bx, by)];
    if (this.#edge.kind === 'vertices') {
      const turned = signed((t) => vertex(h / Math.cos(t)), Math.atan(ua / h), Math.atan(ub / h), tolerance);
      return 2 * this.#edge.side * turned;
    }
    const segments = signed((u) => segment((u * u + h * h) / (2 * h)), ua, ub, tolerance);
    const vertices = signed(
      (t) => vertex(h / (1 + Math.cos(t))),
      2 * Math.atan(ua / h),
      2 * Math.atan(ub / h),
      tolerance,
    );
    return this.#edge.side * (segments + vertices);
  }

  /** ∫ over u of what is linear in the clearance: by the rule of Gauss with two points, exact up to cubics. */
  #quadratic(segment: (clearance: number) => number, from: number, to: number): number {
    const { h } = this.#edge;
    const middle = (from + to) / 2;
    const apart = (to - from) / 2 / Math.sqrt(3);
    const at = (u: number): number => segment((u * u + h * h) / (2 * h));
    return ((to - from) / 2) * (at(middle - apart) + at(middle + apart));
  }

  #ends(a: number, b: number): [number, number, number, number] {
    const edge = this.#edge;
    edge.at(a);
    const [ax, ay] = [edge.x, edge.y];
    edge.atHigh(b);
    return [ax, ay, edge.x, edge.y];
  }

  /** Length of the contacts of a stretch of the bisector of two lines, on both together. */
  #alongLines(ax: number, ay: number, bx: number, by: number): number {
    const { tx, ty } = this.#axis.boundary;
    const { left, right } = this.#edge;
    return (bx - ax) * (tx[right] - tx[left]) + (by - ay) * (ty[right] - ty[left]);
  }
}

function signed(f: (x: number) => number, a: number, b: number, tolerance: number): number {
  return b >= a ? adaptiveIntegral(f, a, b, tolerance).value : -adaptiveIntegral(f, b, a, tolerance).value;
}
