import type { AxisEdge, MedialAxis } from '@pourproof/geometry';
import { adaptiveIntegral } from '../integrals/adaptive-integral.ts';

/** Sums over the contacts of one axis edge with its two sites. */
export interface ContactSpans {
  /** Length of the contacts on site edges, mm. */
  readonly lengthMm: number;
  /** Angle of the contacts on site points, as seen from them. */
  readonly turnRad: number;
}

/** What is integrated over contacts: per mm of site edge and per radian at a site point, each for the clearance over the contact. */
export interface ContactIntegrand {
  readonly strip: (clearance: number) => number;
  readonly fan: (clearance: number) => number;
  /** Clearances at which either is not smooth, rising. */
  readonly kinks: readonly number[];
}

/** The contacts of one edge with one site point: t rises from `from` to `to`, or falls where rounding made the cell negative. */
export interface Fan {
  readonly site: number;
  readonly from: number;
  readonly to: number;
  readonly sign: number;
  clearanceAt(t: number): number;
  /** Unit direction from the site point into the artwork. */
  directionAt(t: number): [number, number];
}

/** How both cells look at one point of an edge. */
export interface ContactSide {
  readonly isFan: boolean;
  /** Unit direction from the contact to the point of the axis. */
  readonly nx: number;
  readonly ny: number;
  /** Contacts, in mm or in radians, for each share of the edge. */
  readonly perShare: number;
}

/** Clearances that differ by less than this share are level along an edge: integrals over them would be all rounding. */
const LEVEL_SHARE = 1e-13;

/**
 * The two cells of one axis edge seen from the boundary: contacts on a site edge by arc length, on a site point by angle. `load` one edge that
 * is no secondary edge, then ask. u is the position along the bisector's own axis, 0 where the clearance would be least.
 */
export class EdgeCells {
  readonly #axis: MedialAxis;
  #edge: AxisEdge;
  /** Least clearance of the whole bisector: of a parabola half the distance from point to line, of a line half that between both points. */
  #h = 0;
  /** +1 where rising u goes with the contacts' own direction. */
  #sign = 1;
  #dx = 0;
  #dy = 0;
  #ox = 0;
  #oy = 0;
  /** Contacts gained for each mm² of way along a bisector of two lines. */
  #tx = 0;
  #ty = 0;

  constructor(axis: MedialAxis, edge: AxisEdge) {
    this.#axis = axis;
    this.#edge = edge;
  }

  /** Takes the edge that was loaded last. */
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

  /** Contacts of the part of the edge with clearance from a to b. */
  spans(a: number, b: number): ContactSpans {
    const [ax, ay, bx, by] = this.#ends(a, b);
    if (this.#edge.kind === 'lines') {
      return { lengthMm: (bx - ax) * this.#tx + (by - ay) * this.#ty, turnRad: 0 };
    }
    const [ua, ub] = [this.#position(ax, ay), this.#position(bx, by)];
    const turnRad = 2 * this.#sign * (Math.atan(ub / this.#h) - Math.atan(ua / this.#h));
    return { lengthMm: this.#edge.kind === 'points' ? 0 : this.#sign * (ub - ua), turnRad };
  }

  /** Integral over the contacts of the part of the edge with clearance from a to b; exact to rounding where both integrands are quadratics. */
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

  /** Both sides of the point at share t of the way up the edge. */
  sidesAt(t: number): ContactSide[] {
    const { count, x, y, tx, ty } = this.#axis.boundary;
    const edge = this.#edge;
    edge.atShare(t);
    const [cx, cy] = [edge.x, edge.y];
    const u = this.#position(cx, cy);
    const span = this.#position(edge.x1, edge.y1) - this.#position(edge.x0, edge.y0);
    const turn = (span * this.#h) / (this.#h * this.#h + u * u);
    return [edge.left, edge.right].map((site) => {
      if (site < count) {
        const along = (edge.x1 - edge.x0) * this.#tx + (edge.y1 - edge.y0) * this.#ty;
        return {
          isFan: false,
          nx: -ty[site],
          ny: tx[site],
          perShare: Math.abs(edge.kind === 'lines' ? along / 2 : span),
        };
      }
      const [dx, dy] = [cx - x[site - count], cy - y[site - count]];
      const d = Math.hypot(dx, dy);
      return {
        isFan: true,
        nx: dx / d,
        ny: dy / d,
        perShare: Math.abs(edge.kind === 'points' ? turn : 2 * turn),
      };
    });
  }

  /** The fans of the part of the edge with clearance from a to b: none, one or two. */
  fans(a: number, b: number): Fan[] {
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
    // rising u has the left point on its left, as seen with y up
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

  /** Integral over the rising clearance from a to b of the angle between both contacts, as a disc there sees them. */
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

  #smooth(a: number, b: number, { strip, fan }: ContactIntegrand, tolerance: number): number {
    const [ax, ay, bx, by] = this.#ends(a, b);
    if (this.#edge.kind === 'lines') {
      const along = (bx - ax) * this.#tx + (by - ay) * this.#ty;
      if (b - a <= LEVEL_SHARE * b) {
        return along * strip(b);
      }
      const share = along === 0 ? 0 : tolerance / Math.abs(along);
      return along * adaptiveIntegral((t) => strip(a + t * (b - a)), 0, 1, share).value;
    }
    const h = this.#h;
    const [ua, ub] = [this.#position(ax, ay), this.#position(bx, by)];
    if (this.#edge.kind === 'points') {
      const turned = signed((t) => fan(h / Math.cos(t)), Math.atan(ua / h), Math.atan(ub / h), tolerance);
      return 2 * this.#sign * turned;
    }
    const stripes = signed((u) => strip((u * u + h * h) / (2 * h)), ua, ub, tolerance);
    const fans = signed(
      (t) => fan(h / (1 + Math.cos(t))),
      2 * Math.atan(ua / h),
      2 * Math.atan(ub / h),
      tolerance,
    );
    return this.#sign * (stripes + fans);
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
