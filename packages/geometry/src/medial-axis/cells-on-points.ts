import { EDGE_STRIDE, GROWS_R, GROWS_X, GROWS_Y, R, TX, TY, X, Y } from './cell-layout.ts';

/**
 * Works out where the cell of a reflex point closes between its two neighbours: one over the radius of the disc that also touches a neighbour is linear
 * in the unit direction from the point to the middle. Each disc is solved from its three sites directly, as in `CellsOnEdges`.
 */
export class CellsOnPoints {
  readonly #edges: Float64Array;
  readonly #cells: Float64Array;
  readonly #previous: Int32Array;
  /** Number of edges; beyond it sites are points. */
  readonly #count: number;
  /** One over the radius of the disc that touches the point in direction d and a neighbour, as k0 + kx·dx + ky·dy. */
  #k0 = 0;
  #kx = 0;
  #ky = 0;

  constructor(edges: Float64Array, previous: Int32Array, cells: Float64Array) {
    this.#edges = edges;
    this.#previous = previous;
    this.#cells = cells;
    this.#count = edges.length / EDGE_STRIDE;
  }

  /**
   * Sets the disc of the cell at place `at`: on reflex point v, between the sites left and right. The bisector with the left one grows as the cell
   * at place `leftAt` says, that with the right one as its own does.
   */
  meet(at: number, v: number, left: number, right: number, leftAt: number): void {
    const before = this.#previous[v];
    if (left === before) {
      if (right === v) {
        this.#cells[at + R] = Infinity;
      } else {
        this.#meetOnNormal(at, v, before, right, at, -1);
      }
    } else if (right === v) {
      this.#meetOnNormal(at, v, v, left, leftAt, 1);
    } else {
      this.#meetBetween(at, v, left, right, leftAt);
    }
  }

  /**
   * Where one neighbour is the point's own edge the disc touches along that edge's normal. The other bisector grows as the cell at place `grows` says;
   * beyond the normal of the other neighbour's line, on the way there, lies the other branch of the parabola.
   */
  #meetOnNormal(at: number, v: number, own: number, other: number, grows: number, turn: 1 | -1): void {
    const edges = this.#edges;
    const cells = this.#cells;
    const vx = edges[v * EDGE_STRIDE + X];
    const vy = edges[v * EDGE_STRIDE + Y];
    const nx = -edges[own * EDGE_STRIDE + TY];
    const ny = edges[own * EDGE_STRIDE + TX];
    let r = Infinity;
    if (other < this.#count) {
      const o = other * EDGE_STRIDE;
      const tx = edges[o + TX];
      const ty = edges[o + TY];
      const growsX = cells[grows + GROWS_X] - vx;
      const growsY = cells[grows + GROWS_Y] - vy;
      const isCut = turn * (growsX * tx + growsY * ty) < 0 && turn * (nx * tx + ny * ty) > 0;
      const h = (vy - edges[o + Y]) * tx - (vx - edges[o + X]) * ty;
      const share = 1 + ty * nx - tx * ny;
      r = !isCut && h > 0 && share > 0 ? h / share : Infinity;
    } else if (this.#seeSite(v, other)) {
      const curvature = this.#kx * nx + this.#ky * ny;
      r = curvature > 0 ? 1 / curvature : Infinity;
    }
    cells[at + X] = vx + r * nx;
    cells[at + Y] = vy + r * ny;
    cells[at + R] = r;
  }

  // biome-ignore lint/complexity/noExcessiveLinesPerFunction: one equation with its cases
  #meetBetween(at: number, v: number, left: number, right: number, leftAt: number): void {
    const edges = this.#edges;
    const cells = this.#cells;
    const n = this.#count;
    cells[at + R] = Infinity;
    const hasLeft = this.#seeSite(v, left);
    const a0 = this.#k0;
    const ax = this.#kx;
    const ay = this.#ky;
    const hasRight = this.#seeSite(v, right);
    const k0 = this.#k0;
    const kx = this.#kx;
    const ky = this.#ky;
    const vx = edges[v * EDGE_STRIDE + X];
    const vy = edges[v * EDGE_STRIDE + Y];
    let lowX = (cells[leftAt + GROWS_X] - vx) / cells[leftAt + GROWS_R];
    let lowY = (cells[leftAt + GROWS_Y] - vy) / cells[leftAt + GROWS_R];
    let highX = (cells[at + GROWS_X] - vx) / cells[at + GROWS_R];
    let highY = (cells[at + GROWS_Y] - vy) / cells[at + GROWS_R];
    // directions of the neighbours, where they are edges
    const l = left < n ? left * EDGE_STRIDE : 0;
    const leftX = edges[l + TX];
    const leftY = edges[l + TY];
    const r = right < n ? right * EDGE_STRIDE : 0;
    const rightX = edges[r + TX];
    const rightY = edges[r + TY];
    // beyond a line's own normal lies the other branch of the parabola: the first branch ends there, at infinity
    const isLeftCut = left < n && isBetween(lowX, lowY, -leftY, leftX, highX, highY);
    const isRightCut = right < n && isBetween(lowX, lowY, -rightY, rightX, highX, highY);
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
      // the right neighbour's curvature overtakes the left one's as d turns from +y to +x
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
      cells[at + X] = vx + radius * dx;
      cells[at + Y] = vy + radius * dy;
      cells[at + R] = radius;
    }
  }

  /** Sets one over the radius against a site; whether the site limits discs that touch point v at all. */
  #seeSite(v: number, other: number): boolean {
    const edges = this.#edges;
    const n = this.#count;
    const vx = edges[v * EDGE_STRIDE + X];
    const vy = edges[v * EDGE_STRIDE + Y];
    if (other < n) {
      const o = other * EDGE_STRIDE;
      const tx = edges[o + TX];
      const ty = edges[o + TY];
      const h = (vy - edges[o + Y]) * tx - (vx - edges[o + X]) * ty;
      this.#k0 = 1 / h;
      this.#kx = ty / h;
      this.#ky = -tx / h;
      return h > 0;
    }
    const q = (other - n) * EDGE_STRIDE;
    const qx = edges[q + X] - vx;
    const qy = edges[q + Y] - vy;
    const d2 = qx * qx + qy * qy;
    this.#k0 = 0;
    this.#kx = (2 * qx) / d2;
    this.#ky = (2 * qy) / d2;
    return d2 > 0;
  }
}

/** Whether direction d lies on the way from low to high, turning from +y to +x by less than half a turn. */
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
