import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, parabolaArc } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { type Tip, tipDepth, tipSlope } from './tip-depth.ts';

/** Greatest number of halvings of a stretch; each divides the deviation by four. */
const MAX_HALVINGS = 24;
/**
 * Greatest width of a panel of the quadrature in asinh(u/h): five nodes give 13 digits on it (measured in a
 * test).
 */
const PANEL_WIDTH = 0.25;
/** Nodes and weights of Gauss–Legendre quadrature with five nodes on −1 … 1, in closed form. */
const INNER_NODE = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3;
const OUTER_NODE = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3;
const INNER_WEIGHT = (322 + 13 * Math.sqrt(70)) / 900;
const OUTER_WEIGHT = (322 - 13 * Math.sqrt(70)) / 900;
const MIDDLE_WEIGHT = 128 / 225;

/**
 * Path of a V cutter's tip along axis edges, in three dimensions. Coordinates are relative to the axis'
 * origin.
 */
export class TipPath {
  readonly #edge: AxisEdge;
  readonly #tip: Tip;

  constructor(axis: MedialAxis, tip: Tip) {
    this.#edge = new AxisEdge(axis);
    this.#tip = tip;
  }

  /**
   * Points `[x, y, depth, …]` of the path on edge e, from where the tip first fits up to clearance `top`;
   * their chords are within `tolerance` of the path.
   */
  points(e: number, top: number, tolerance: number): number[] {
    const edge = this.#edge;
    edge.load(e);
    const end = edge.shareOf(top);
    const out: number[] = [];
    const joint = this.#tip.tipRadiusMm * Math.cos(this.#tip.includedRad / 2);
    const start = this.#startShare();
    const isBent = edge.r0 < joint && joint < Math.min(top, edge.r1);
    const shares = isBent ? [start, edge.shareOf(joint), end] : [start, end];
    out.push(...this.#at(start));
    for (let k = 1; k < shares.length; k++) {
      pollStep();
      this.#refine(shares[k - 1], this.#at(shares[k - 1]), shares[k], this.#at(shares[k]), tolerance, 0, out);
    }
    return out;
  }

  /** Share of the loaded edge at which a flat tip first fits. */
  #startShare(): number {
    const flat = this.#tip.tipFlatMm / 2;
    return flat > this.#edge.r0 ? this.#edge.shareOf(flat) : 0;
  }

  #at(share: number): [number, number, number] {
    this.#edge.atShare(share);
    return [this.#edge.x, this.#edge.y, tipDepth(this.#tip, this.#edge.clearance)];
  }

  #refine(
    s: number,
    p: [number, number, number],
    t: number,
    q: [number, number, number],
    tolerance: number,
    halvings: number,
    out: number[],
  ): void {
    const middle = this.#at((s + t) / 2);
    if (halvings < MAX_HALVINGS && distanceToLine(middle, p, q) > tolerance) {
      this.#refine(s, p, (s + t) / 2, middle, tolerance, halvings + 1, out);
      this.#refine((s + t) / 2, middle, t, q, tolerance, halvings + 1, out);
    } else {
      out.push(...q);
    }
  }

  /**
   * Length of the path on edge e up to clearance `top`, mm: in closed form where it is straight, else by
   * quadrature to 12 digits.
   */
  length(e: number, top: number): number {
    const edge = this.#edge;
    edge.load(e);
    const high = Math.min(top, edge.r1);
    const joint = this.#tip.tipRadiusMm * Math.cos(this.#tip.includedRad / 2);
    if (edge.kind === 'segments') {
      return this.#lengthOnLine(high, joint);
    }
    const { h, u0, u1 } = this.#bisector();
    const span = u1 - u0;
    const start = u0 + this.#startShare() * span;
    const turn = Math.max(start, u0 + edge.shareOf(Math.min(Math.max(joint, edge.r0), high)) * span);
    const end = u0 + edge.shareOf(high) * span;
    const { includedRad } = this.#tip;
    // as deep as a straight flank lets it, the tip's path over a parabola is one again, narrower by the sine
    const cone =
      edge.kind === 'segment-vertex'
        ? parabolaArc(h * Math.sin(includedRad / 2), turn, end)
        : this.#quadrature(h, turn, end);
    return (turn > start ? this.#quadrature(h, start, turn) : 0) + cone;
  }

  #lengthOnLine(high: number, joint: number): number {
    const { r0, r1, x0, y0, x1, y1 } = this.#edge;
    const flat = Math.hypot(x1 - x0, y1 - y0);
    if (r1 <= r0) {
      return flat;
    }
    const perRadius = flat / (r1 - r0);
    const { tipRadiusMm: rho, tipFlatMm, includedRad } = this.#tip;
    const steep = Math.max(r0, Math.min(joint, high), tipFlatMm / 2);
    const coneLength = (high - steep) * Math.hypot(perRadius, 1 / Math.tan(includedRad / 2));
    if (joint <= r0) {
      return coneLength;
    }
    // on the rounded tip r = ρ sin t
    const speed = (t: number): number => rho * Math.hypot(perRadius * Math.cos(t), Math.sin(t));
    return coneLength + panels(speed, Math.asin(r0 / rho), Math.asin(steep / rho));
  }

  /**
   * Half the distance of two vertices, or the distance of vertex and edge, and the ends of the loaded edge
   * along the bisector, 0 where the clearance is least.
   */
  #bisector(): { h: number; u0: number; u1: number } {
    const edge = this.#edge;
    const [u0, u1] = [edge.along(edge.x0, edge.y0), edge.along(edge.x1, edge.y1)];
    return u1 < u0 ? { h: edge.h, u0: -u0, u1: -u1 } : { h: edge.h, u0, u1 };
  }

  #quadrature(h: number, from: number, to: number): number {
    const isParabola = this.#edge.kind === 'segment-vertex';
    const tip = this.#tip;
    const speed = (t: number): number => {
      const u = h * Math.sinh(t);
      const steps = isParabola ? u / h : u / Math.hypot(u, h);
      const clearance = isParabola ? (u * u + h * h) / (2 * h) : Math.hypot(u, h);
      const along = isParabola ? Math.hypot(1, u / h) : 1;
      return h * Math.cosh(t) * Math.hypot(along, tipSlope(tip, clearance) * steps);
    };
    return panels(speed, Math.asinh(from / h), Math.asinh(to / h));
  }
}

/** Integral of a smooth function by panels. */
function panels(f: (t: number) => number, from: number, to: number): number {
  const count = Math.max(1, Math.ceil((to - from) / PANEL_WIDTH));
  const half = (to - from) / (2 * count);
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const m = from + (2 * k + 1) * half;
    sum +=
      MIDDLE_WEIGHT * f(m) +
      INNER_WEIGHT * (f(m - half * INNER_NODE) + f(m + half * INNER_NODE)) +
      OUTER_WEIGHT * (f(m - half * OUTER_NODE) + f(m + half * OUTER_NODE));
  }
  return half * sum;
}

function distanceToLine(m: readonly number[], p: readonly number[], q: readonly number[]): number {
  const d = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
  const v = [m[0] - p[0], m[1] - p[1], m[2] - p[2]];
  const dd = d[0] * d[0] + d[1] * d[1] + d[2] * d[2];
  const s = dd > 0 ? Math.min(1, Math.max(0, (v[0] * d[0] + v[1] * d[1] + v[2] * d[2]) / dd)) : 0;
  return Math.hypot(v[0] - s * d[0], v[1] - s * d[1], v[2] - s * d[2]);
}
