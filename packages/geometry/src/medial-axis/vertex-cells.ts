import {
  type Cells,
  GROWS_R,
  GROWS_X,
  GROWS_Y,
  MATE,
  R,
  SITE,
  SITE_TX,
  SITE_TY,
  SITE_X,
  SITE_Y,
  X,
  Y,
} from './cell-layout.ts';

/**
 * Finds the disc in which the cell of a reflex vertex closes between its two neighbours: the reciprocal of
 * the radius of the disc that also touches a neighbour is linear in the unit direction from the vertex to the
 * centre. Each disc is solved from its three sites, as in `SegmentCells`.
 */
export class VertexCells {
  readonly #numbers: Float64Array;
  readonly #links: Int32Array;
  /** Number of edges; sites from it on are vertices. */
  readonly #count: number;
  /**
   * Reciprocal of the radius of the disc that touches the vertex, with its centre in direction d, and a
   * neighbour: k0 + kx·dx + ky·dy.
   */
  #k0 = 0;
  #kx = 0;
  #ky = 0;

  constructor({ numbers, links }: Cells, count: number) {
    this.#numbers = numbers;
    this.#links = links;
    this.#count = count;
  }

  /**
   * Sets the disc in which the vertex cell at place `at` closes between the sites of the cells at `left` and
   * `right`.
   */
  meet(at: number, left: number, right: number): void {
    const links = this.#links;
    const isOwnLeft = links[2 * left + SITE] === links[2 * at + MATE];
    const isOwnRight = links[2 * right + SITE] === links[2 * at + SITE] - this.#count;
    if (isOwnLeft && isOwnRight) {
      this.#numbers[at + R] = Infinity;
    } else if (isOwnLeft) {
      this.#meetOnNormal(at, left, right, at, -1);
    } else if (isOwnRight) {
      this.#meetOnNormal(at, right, left, left, 1);
    } else {
      this.#meetBetween(at, left, right);
    }
  }

  /**
   * Where one neighbour is the vertex's own edge, the centre lies on that edge's normal. The other bisector
   * grows from the disc at place `grows`; beyond the normal of the other neighbour's line lies the wrong
   * branch of the parabola.
   */
  #meetOnNormal(at: number, own: number, other: number, grows: number, turn: 1 | -1): void {
    const numbers = this.#numbers;
    const vx = numbers[at + SITE_X];
    const vy = numbers[at + SITE_Y];
    const nx = -numbers[own + SITE_TY];
    const ny = numbers[own + SITE_TX];
    let r = Infinity;
    if (this.#links[2 * other + SITE] < this.#count) {
      const tx = numbers[other + SITE_TX];
      const ty = numbers[other + SITE_TY];
      const growsX = numbers[grows + GROWS_X] - vx;
      const growsY = numbers[grows + GROWS_Y] - vy;
      const isCut = turn * (growsX * tx + growsY * ty) < 0 && turn * (nx * tx + ny * ty) > 0;
      const h = (vy - numbers[other + SITE_Y]) * tx - (vx - numbers[other + SITE_X]) * ty;
      const share = 1 + ty * nx - tx * ny;
      r = !isCut && h > 0 && share > 0 ? h / share : Infinity;
    } else if (this.#seeSite(at, other)) {
      const curvature = this.#kx * nx + this.#ky * ny;
      r = curvature > 0 ? 1 / curvature : Infinity;
    }
    numbers[at + X] = vx + r * nx;
    numbers[at + Y] = vy + r * ny;
    numbers[at + R] = r;
  }

  // biome-ignore lint/complexity/noExcessiveLinesPerFunction: one equation with its cases
  #meetBetween(at: number, left: number, right: number): void {
    const numbers = this.#numbers;
    const links = this.#links;
    const n = this.#count;
    numbers[at + R] = Infinity;
    const hasLeft = this.#seeSite(at, left);
    const a0 = this.#k0;
    const ax = this.#kx;
    const ay = this.#ky;
    const hasRight = this.#seeSite(at, right);
    const k0 = this.#k0;
    const kx = this.#kx;
    const ky = this.#ky;
    const vx = numbers[at + SITE_X];
    const vy = numbers[at + SITE_Y];
    let lowX = (numbers[left + GROWS_X] - vx) / numbers[left + GROWS_R];
    let lowY = (numbers[left + GROWS_Y] - vy) / numbers[left + GROWS_R];
    let highX = (numbers[at + GROWS_X] - vx) / numbers[at + GROWS_R];
    let highY = (numbers[at + GROWS_Y] - vy) / numbers[at + GROWS_R];
    const isLeftLine = links[2 * left + SITE] < n;
    const isRightLine = links[2 * right + SITE] < n;
    const leftX = numbers[left + SITE_TX];
    const leftY = numbers[left + SITE_TY];
    const rightX = numbers[right + SITE_TX];
    const rightY = numbers[right + SITE_TY];
    // beyond a line's own normal lies the wrong branch of the parabola: the right one ends there, at infinity
    const isLeftCut = isLeftLine && isBetween(lowX, lowY, -leftY, leftX, highX, highY);
    const isRightCut = isRightLine && isBetween(lowX, lowY, -rightY, rightX, highX, highY);
    if (isLeftCut && isRightCut && leftX * rightY - leftY * rightX <= 0) {
      return;
    }
    if (isRightCut) {
      lowX = -rightY;
      lowY = rightX;
    }
    if (isLeftCut) {
      highX = -leftY;
      highY = leftX;
    }
    let dx = lowX;
    let dy = lowY;
    let curvature = 0;
    if (hasLeft && hasRight) {
      // the curvature for the right neighbour overtakes that for the left as d turns from +y to +x
      const w0 = k0 - a0;
      const wx = kx - ax;
      const wy = ky - ay;
      if (w0 + wx * highX + wy * highY <= 0) {
        dx = highX;
        dy = highY;
      } else if (w0 + wx * lowX + wy * lowY < 0) {
        const w2 = wx * wx + wy * wy;
        const root = Math.sqrt(Math.max(0, w2 - w0 * w0));
        dx = (-w0 * wx - root * wy) / w2;
        dy = (-w0 * wy + root * wx) / w2;
      }
      curvature =
        Math.abs(ax * dy - ay * dx) < Math.abs(kx * dy - ky * dx)
          ? a0 + ax * dx + ay * dy
          : k0 + kx * dx + ky * dy;
    } else if (hasRight) {
      curvature = k0 + kx * dx + ky * dy;
    } else if (hasLeft) {
      dx = highX;
      dy = highY;
      curvature = a0 + ax * dx + ay * dy;
    }
    if (curvature > 0) {
      const radius = 1 / curvature;
      numbers[at + X] = vx + radius * dx;
      numbers[at + Y] = vy + radius * dy;
      numbers[at + R] = radius;
    }
  }

  /**
   * Sets the coefficients of the reciprocal radius for a site; whether it limits discs that touch the vertex
   * at all.
   */
  #seeSite(at: number, other: number): boolean {
    const numbers = this.#numbers;
    const dx = numbers[at + SITE_X] - numbers[other + SITE_X];
    const dy = numbers[at + SITE_Y] - numbers[other + SITE_Y];
    if (this.#links[2 * other + SITE] < this.#count) {
      const tx = numbers[other + SITE_TX];
      const ty = numbers[other + SITE_TY];
      const h = dy * tx - dx * ty;
      this.#k0 = 1 / h;
      this.#kx = ty / h;
      this.#ky = -tx / h;
      return h > 0;
    }
    const d2 = dx * dx + dy * dy;
    this.#k0 = 0;
    this.#kx = (-2 * dx) / d2;
    this.#ky = (-2 * dy) / d2;
    return d2 > 0;
  }
}

/** Whether direction d lies between low and high, turning from +y to +x by less than half a turn. */
function isBetween(
  lowX: number,
  lowY: number,
  dx: number,
  dy: number,
  highX: number,
  highY: number,
): boolean {
  return lowX * dy - lowY * dx < 0 && dx * highY - dy * highX < 0;
}
