import { appendRest, spreadArea } from './area-true-polyline.ts';
import { MAX_SEGMENTS } from './max-segments.ts';
import type { PointSink } from './point-sink.ts';
import { markUntold } from './told-chords.ts';

/** An ellipse arc by its centre: point(θ) = centre + cosθ·u + sinθ·v with half-axis vectors u and v. */
export interface EllipseArc {
  readonly cx: number;
  readonly cy: number;
  readonly ux: number;
  readonly uy: number;
  readonly vx: number;
  readonly vy: number;
  /** Start and end angle in radians; the arc runs from start to end, either way, at most one turn. */
  readonly start: number;
  readonly end: number;
}

/**
 * With two segments the one inner point would have to make up for both slices, for which the tolerance leaves
 * no room.
 */
const MIN_SEGMENTS = 3;

/**
 * Appends an ellipse arc (any affine image of a circular arc) to `out` with exactly its signed area, within
 * `toleranceMm`. The start point is not appended, the end point is, at its exact place on the ellipse.
 */
export function flattenEllipseArc(out: PointSink, arc: EllipseArc, toleranceMm: number): void {
  const { ux, uy, vx, vy, start, end } = arc;
  const sweep = end - start;
  // on a circle of the larger half-axis a step φ deviates r(1 − cos(φ/2)); an affine image deviates no more
  const r = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy));
  const step = r > toleranceMm ? 2 * Math.acos(1 - toleranceMm / r) : Math.PI / 2;
  const wanted = Math.ceil(Math.abs(sweep) / Math.min(step, Math.PI / 4));
  if (Number.isNaN(wanted)) {
    // a radius beyond all numbers, or an angle that is none: a point that readers find and report
    out.push(Number.NaN, Number.NaN);
    return;
  }
  let n = Math.min(MAX_SEGMENTS, Math.max(MIN_SEGMENTS, wanted));
  const chords = new ArcChords(arc, n, toleranceMm);
  // where a few segments just keep the tolerance, their inner points may lack the room for the slices of the ends
  while (!chords.hasArea && n < Math.min(MAX_SEGMENTS, wanted + MORE_SEGMENTS)) {
    n++;
    chords.divide(n);
  }
  chords.halveUntold();
  appendRest(out, chords.points);
}

/** One more is enough on circles. */
const MORE_SEGMENTS = 4;

/** Most halvings of one chord; a dozen make it as high as rounding. */
const MAX_HALVINGS = 40;

/** An arc as chords, whose inner points are moved so that they have its area. */
class ArcChords {
  points: number[] = [];
  hasArea = false;
  readonly #arc: EllipseArc;
  readonly #toleranceMm: number;
  /** Angle at each point. */
  #angles: number[] = [];
  #heights: number[] = [];
  readonly #moves: number[] = [];

  constructor(arc: EllipseArc, n: number, toleranceMm: number) {
    this.#arc = arc;
    this.#toleranceMm = toleranceMm;
    this.divide(n);
  }

  /** Cuts the arc into n chords by equal angles. */
  divide(n: number): void {
    const { start, end } = this.#arc;
    const angles: number[] = [];
    for (let i = 0; i <= n; i++) {
      angles.push(start + ((end - start) * i) / n);
    }
    this.#through(angles);
  }

  /** Halves chords until the outline tells each of them from a straight edge: at the tips of a thin ellipse. */
  halveUntold(): void {
    const marks: number[] = [];
    for (let round = 0; round < MAX_HALVINGS && this.#heights.length < MAX_SEGMENTS; round++) {
      if (markUntold(this.points, this.#heights, this.#moves, this.#toleranceMm, marks) === 0) {
        return;
      }
      const angles = this.#angles;
      this.#through(
        angles.flatMap((angle, i) => (marks[i] === 1 ? [angle, (angle + angles[i + 1]) / 2] : [angle])),
      );
    }
  }

  #through(angles: number[]): void {
    const { cx, cy, ux, uy, vx, vy } = this.#arc;
    const points: number[] = [];
    const slices: number[] = [];
    const heights: number[] = [];
    angles.forEach((angle, i) => {
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      points.push(cx + c * ux + s * vx, cy + c * uy + s * vy);
      if (i > 0) {
        const turn = angle - angles[i - 1];
        // the sector's (u×v)/2 · turn, less the triangle's (u×v)/2 · sin(turn)
        slices.push(((ux * vy - uy * vx) * (turn - Math.sin(turn))) / 2);
        // where the arc is farthest from its chord, half-way, it has moved from it by this share of the half-axis there
        const half = (angle + angles[i - 1]) / 2;
        const share = 1 - Math.cos(turn / 2);
        heights.push(
          share *
            Math.hypot(Math.cos(half) * ux + Math.sin(half) * vx, Math.cos(half) * uy + Math.sin(half) * vy),
        );
      }
    });
    this.#angles = angles;
    this.#heights = heights;
    this.points = points;
    this.hasArea = spreadArea(points, slices, this.#toleranceMm, this.#moves) === 0;
  }
}
