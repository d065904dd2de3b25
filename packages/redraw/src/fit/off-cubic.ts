import type { XY } from './outline-path.ts';
import type { Polyline } from './polyline.ts';

/** Steps of Newton's method towards the foot of a point; from one point to the next the first guess is near. */
const STEPS = 4;

/**
 * Upper bound on the Hausdorff distance between a cubic Bézier and the stretch of a run from point i to point j that it stands for, mm; Infinity as soon as it is
 * above `limitMm`, or where the feet of points do not follow one another.
 *
 * Between the feet of two points in succession a piece of the cubic lies in the hull of its control points, none of which is farther from the segment
 * between the points than the farthest of them: distance from a convex set is a convex function. And that piece passes every place along
 * the segment between its ends' feet at no greater distance, as it is connected; beyond them the ends are nearer still.
 */
export function offCubic(
  run: Polyline,
  [i, j]: readonly [number, number],
  [[x1, y1], [x2, y2]]: readonly [XY, XY],
  limitMm: number,
): number {
  const cubic = new Cubic(run.x[i], run.y[i], x1, y1, x2, y2, run.x[j], run.y[j]);
  const whole = run.way[j] - run.way[i];
  let off = 0;
  let t = 0;
  cubic.at(0);
  let [px, py, pdx, pdy] = [cubic.x, cubic.y, cubic.dx, cubic.dy];
  for (let k = i + 1; k <= j; k++) {
    const [qx, qy] = [run.x[k], run.y[k]];
    const next = k === j ? 1 : cubic.foot(qx, qy, t + ((run.way[k] - run.way[k - 1]) / whole) * 1);
    if (!(next > t && next <= 1)) {
      return Infinity;
    }
    cubic.at(next);
    const third = (next - t) / 3;
    const [ox, oy] = [run.x[k - 1], run.y[k - 1]];
    off = Math.max(
      off,
      fromSegment(px, py, ox, oy, qx, qy),
      fromSegment(px + third * pdx, py + third * pdy, ox, oy, qx, qy),
      fromSegment(cubic.x - third * cubic.dx, cubic.y - third * cubic.dy, ox, oy, qx, qy),
      fromSegment(cubic.x, cubic.y, ox, oy, qx, qy),
      Math.hypot(cubic.x - qx, cubic.y - qy),
    );
    if (!(off <= limitMm)) {
      return Infinity;
    }
    t = next;
    [px, py, pdx, pdy] = [cubic.x, cubic.y, cubic.dx, cubic.dy];
  }
  return off;
}

/** A cubic Bézier as a polynomial. */
class Cubic {
  readonly #c: readonly number[];
  x = 0;
  y = 0;
  dx = 0;
  dy = 0;

  constructor(
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    x2: number,
    y2: number,
    x3: number,
    y3: number,
  ) {
    this.#c = [
      x0,
      3 * (x1 - x0),
      3 * (x0 - 2 * x1 + x2),
      x3 - 3 * x2 + 3 * x1 - x0,
      y0,
      3 * (y1 - y0),
      3 * (y0 - 2 * y1 + y2),
      y3 - 3 * y2 + 3 * y1 - y0,
    ];
  }

  /** Sets the point and the derivative at t. */
  at(t: number): void {
    const [a0, a1, a2, a3, b0, b1, b2, b3] = this.#c;
    this.x = ((a3 * t + a2) * t + a1) * t + a0;
    this.y = ((b3 * t + b2) * t + b1) * t + b0;
    this.dx = (3 * a3 * t + 2 * a2) * t + a1;
    this.dy = (3 * b3 * t + 2 * b2) * t + b1;
  }

  /** Where the curve is nearest to a point, from a first guess on. */
  foot(px: number, py: number, guess: number): number {
    const [, , a2, a3, , , b2, b3] = this.#c;
    let t = Math.min(guess, 1);
    for (let k = 0; k < STEPS; k++) {
      this.at(t);
      const [ex, ey] = [this.x - px, this.y - py];
      const speed = this.dx * this.dx + this.dy * this.dy;
      const bend = ex * (6 * a3 * t + 2 * a2) + ey * (6 * b3 * t + 2 * b2);
      // where the second derivative pulls the wrong way, the step of Gauss and Newton
      const slope = speed + bend > 0.2 * speed ? speed + bend : speed;
      t -= (ex * this.dx + ey * this.dy) / slope;
      t = Math.max(0, Math.min(1, t));
    }
    return t;
  }
}

/** Distance of a point from a segment. */
function fromSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
