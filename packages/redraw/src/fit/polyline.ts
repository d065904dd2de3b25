import type { XY } from './outline-path.ts';

/** Points of a run, and what is asked of stretches of it again and again. */
export class Polyline {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Way along it up to each point, mm. */
  readonly way: Float64Array;
  readonly #areas: Float64Array;
  readonly #momentsX: Float64Array;
  readonly #momentsY: Float64Array;

  /** @param points at least two, no two in succession equal */
  constructor(points: readonly XY[]) {
    const n = points.length;
    this.x = Float64Array.from(points, ([x]) => x);
    this.y = Float64Array.from(points, ([, y]) => y);
    this.way = new Float64Array(n);
    this.#areas = new Float64Array(n);
    this.#momentsX = new Float64Array(n);
    this.#momentsY = new Float64Array(n);
    for (let i = 1; i < n; i++) {
      const [ax, ay] = this.#local(i - 1);
      const [bx, by] = this.#local(i);
      const cross = ax * by - ay * bx;
      this.way[i] = this.way[i - 1] + Math.hypot(bx - ax, by - ay);
      this.#areas[i] = this.#areas[i - 1] + cross / 2;
      this.#momentsX[i] = this.#momentsX[i - 1] + (cross * (ax + bx)) / 6;
      this.#momentsY[i] = this.#momentsY[i - 1] + (cross * (ay + by)) / 6;
    }
  }

  get count(): number {
    return this.x.length;
  }

  at(i: number): XY {
    return [this.x[i], this.y[i]];
  }

  /**
   * Of the stretch from point i to point j in the frame in which it begins at 0, 0 and ends at 1, 0: the signed area between it and its
   * chord, and the first moment of that along the chord.
   */
  underChord(i: number, j: number): { readonly area: number; readonly moment: number } {
    const [ax, ay] = this.#local(i);
    const [bx, by] = this.#local(j);
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    // closed by the chord back
    const cross = bx * ay - by * ax;
    const area = this.#areas[j] - this.#areas[i] + cross / 2;
    const mx = this.#momentsX[j] - this.#momentsX[i] + (cross * (ax + bx)) / 6 - area * ax;
    const my = this.#momentsY[j] - this.#momentsY[i] + (cross * (ay + by)) / 6 - area * ay;
    return { area: area / square, moment: (mx * dx + my * dy) / (square * square) };
  }

  /** Sum of the turns between points i and j, each taken as positive, radians. */
  turnBetween(i: number, j: number): number {
    let sum = 0;
    for (let k = i + 1; k < j; k++) {
      const [ax, ay] = [this.x[k] - this.x[k - 1], this.y[k] - this.y[k - 1]];
      const [bx, by] = [this.x[k + 1] - this.x[k], this.y[k + 1] - this.y[k]];
      sum += Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    }
    return sum;
  }

  /** Unit tangent at an inner point: that of the circle through it and its neighbours. */
  tangentAt(i: number): XY {
    const [ax, ay] = [this.x[i] - this.x[i - 1], this.y[i] - this.y[i - 1]];
    const [bx, by] = [this.x[i + 1] - this.x[i], this.y[i + 1] - this.y[i]];
    const [a, b] = [ax * ax + ay * ay, bx * bx + by * by];
    return unit(ax / a + bx / b, ay / a + by / b);
  }

  /**
   * Unit tangent at the first point (`way` 1) or, backwards along the run, at the last (-1): the direction of chords as a linear function of the
   * way, without the chord that ends there, whose other end was moved alone when the curve was flattened.
   */
  endTangent(side: 1 | -1): XY {
    const n = this.count;
    const point = (k: number): XY => this.at(side === 1 ? k : n - 1 - k);
    if (n === 2) {
      return direction(point(0), point(1));
    }
    const first = n > 3 ? 1 : 0;
    const [p, q, r] = [point(first), point(first + 1), point(first + 2)];
    const [ax, ay] = direction(p, q);
    const [bx, by] = direction(q, r);
    const [a, b] = [Math.hypot(q[0] - p[0], q[1] - p[1]), Math.hypot(r[0] - q[0], r[1] - q[1])];
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    const lead = first === 0 ? 0 : Math.hypot(p[0] - point(0)[0], p[1] - point(0)[1]);
    const back = (-turn * (lead + a / 2)) / ((a + b) / 2);
    const [c, s] = [Math.cos(back), Math.sin(back)];
    return [c * ax - s * ay, s * ax + c * ay];
  }

  /** Relative to the first point, so that artwork far from the origin keeps its digits. */
  #local(i: number): XY {
    return [this.x[i] - this.x[0], this.y[i] - this.y[0]];
  }
}

/** The unit vector of a direction. */
export function unit(x: number, y: number): XY {
  const d = Math.hypot(x, y);
  return [x / d, y / d];
}

/** Unit direction from one point to another. */
export function direction([ax, ay]: XY, [bx, by]: XY): XY {
  return unit(bx - ax, by - ay);
}
