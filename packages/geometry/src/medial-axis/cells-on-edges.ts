import { EDGE_STRIDE, END, GROWS_X, GROWS_Y, LENGTH, R, TX, TY, X, Y } from './cell-layout.ts';
import { STRAIGHT_RAD } from './tolerances.ts';

/**
 * Works out where the cell of a site edge closes between its two neighbours: along the edge the radius of the disc that also touches a neighbour is
 * linear in the arc length where that is an edge, quadratic where it is a point. Each disc is solved from its three sites directly, so that errors
 * do not add up along the axis.
 */
export class CellsOnEdges {
  readonly #edges: Float64Array;
  readonly #cells: Float64Array;
  /** Number of edges; beyond it sites are points. */
  readonly #count: number;
  /** Radius of the disc that touches edge b at arc length s + u and the line of another edge, as (slope·u + start) / share. */
  #share = 0;
  #slope = 0;
  #start = 0;
  /** The same for an edge or a point, as c2·u² + c1·u + c0. */
  #c2 = 0;
  #c1 = 0;
  #c0 = 0;

  constructor(edges: Float64Array, cells: Float64Array) {
    this.#edges = edges;
    this.#cells = cells;
    this.#count = edges.length / EDGE_STRIDE;
  }

  /**
   * Sets the disc of the cell at place `at`: on edge b, between the sites left and right. The bisector with the left one grows as the cell at
   * place `leftAt` says, that with the right one as its own does.
   */
  meet(at: number, b: number, left: number, right: number, leftAt: number): void {
    const n = this.#count;
    const isOwnLeft = left === n + b;
    const isOwnRight = right >= n && right - n === this.#edges[b * EDGE_STRIDE + END];
    if (isOwnLeft && isOwnRight) {
      this.#cells[at + R] = Infinity;
    } else if (isOwnLeft) {
      this.#meetAtEnd(at, b, 0, right);
    } else if (isOwnRight) {
      this.#meetAtEnd(at, b, Math.max(this.#edges[b * EDGE_STRIDE + LENGTH], this.#foot(leftAt, b)), left);
    } else if (left < n && right < n) {
      this.#meetBetweenLines(at, b, left, right, leftAt);
    } else {
      this.#meetBetween(at, b, left, right, leftAt);
    }
  }

  /** Where one neighbour is the point at an end of the edge the disc touches there, at arc length s. */
  #meetAtEnd(at: number, b: number, s: number, other: number): void {
    this.#touch(at, b, s, this.#alongSite(b, s, other) ? this.#c0 : Infinity);
  }

  /** Between two edges. Both radii are kept as fractions: that saves divisions where most cells close. */
  #meetBetweenLines(at: number, b: number, left: number, right: number, leftAt: number): void {
    const low = this.#foot(leftAt, b);
    const width = Math.max(0, this.#foot(at, b) - low);
    const hasLeft = this.#alongLine(b, low, left);
    const share = this.#share;
    const slope = this.#slope;
    const start = this.#start;
    const hasRight = this.#alongLine(b, low, right);
    if (!(hasLeft && hasRight)) {
      const r = hasRight ? this.#start / this.#share : hasLeft ? (slope * width + start) / share : Infinity;
      this.#touch(at, b, hasLeft ? low + width : low, r);
      return;
    }
    const rise = slope * this.#share - this.#slope * share;
    const gap = start * this.#share - this.#start * share;
    const u = gap >= 0 ? 0 : rise * width + gap <= 0 ? width : Math.min(-gap / rise, width);
    // the flatter of the two functions feels least of an error in u
    const r =
      Math.abs(slope) * this.#share < Math.abs(this.#slope) * share
        ? (slope * u + start) / share
        : (this.#slope * u + this.#start) / this.#share;
    this.#touch(at, b, low + u, r);
  }

  #meetBetween(at: number, b: number, left: number, right: number, leftAt: number): void {
    const low = this.#foot(leftAt, b);
    const width = Math.max(0, this.#foot(at, b) - low);
    const hasLeft = this.#alongSite(b, low, left);
    const a2 = this.#c2;
    const a1 = this.#c1;
    const a0 = this.#c0;
    const hasRight = this.#alongSite(b, low, right);
    const c2 = this.#c2;
    const c1 = this.#c1;
    const c0 = this.#c0;
    if (!(hasLeft && hasRight)) {
      const r = hasRight ? c0 : hasLeft ? (a2 * width + a1) * width + a0 : Infinity;
      this.#touch(at, b, hasLeft ? low + width : low, r);
      return;
    }
    const u = risingRoot(a2 - c2, a1 - c1, a0 - c0, width);
    // the flatter of the two functions feels least of an error in u
    const isLeftFlatter = Math.abs(2 * a2 * u + a1) < Math.abs(2 * c2 * u + c1);
    this.#touch(at, b, low + u, isLeftFlatter ? (a2 * u + a1) * u + a0 : (c2 * u + c1) * u + c0);
  }

  /** Foot on edge b of the disc from which a bisector grows. */
  #foot(at: number, b: number): number {
    const edges = this.#edges;
    const cells = this.#cells;
    const edge = b * EDGE_STRIDE;
    return (
      (cells[at + GROWS_X] - edges[edge + X]) * edges[edge + TX] +
      (cells[at + GROWS_Y] - edges[edge + Y]) * edges[edge + TY]
    );
  }

  /** Sets the disc to the one of a radius that touches edge b at arc length s. */
  #touch(at: number, b: number, s: number, r: number): void {
    const edges = this.#edges;
    const cells = this.#cells;
    const edge = b * EDGE_STRIDE;
    const tx = edges[edge + TX];
    const ty = edges[edge + TY];
    cells[at + X] = edges[edge + X] + s * tx - r * ty;
    cells[at + Y] = edges[edge + Y] + s * ty + r * tx;
    cells[at + R] = r;
  }

  /** Whether another edge's line limits discs that touch edge b: lines in one direction don't. */
  #alongLine(b: number, s: number, other: number): boolean {
    const edges = this.#edges;
    const at = b * EDGE_STRIDE;
    const to = other * EDGE_STRIDE;
    const tx = edges[at + TX];
    const ty = edges[at + TY];
    const otherX = edges[to + TX];
    const otherY = edges[to + TY];
    const dx = tx - otherX;
    const dy = ty - otherY;
    const turn2 = dx * dx + dy * dy;
    // from whichever end of the other edge meets this one, so that neighbours start at exactly zero
    const p = edges[to + END] === b ? at : to;
    const px = edges[at + X] - edges[p + X] + s * tx;
    const py = edges[at + Y] - edges[p + Y] + s * ty;
    this.#share = turn2 / 2;
    this.#slope = ty * otherX - tx * otherY;
    this.#start = py * otherX - px * otherY;
    return turn2 >= STRAIGHT_RAD * STRAIGHT_RAD;
  }

  #alongSite(b: number, s: number, other: number): boolean {
    const n = this.#count;
    if (other < n) {
      const isLimit = this.#alongLine(b, s, other);
      this.#c2 = 0;
      this.#c1 = this.#slope / this.#share;
      this.#c0 = this.#start / this.#share;
      return isLimit;
    }
    const edges = this.#edges;
    const at = b * EDGE_STRIDE;
    const q = (other - n) * EDGE_STRIDE;
    const qx = edges[q + X] - edges[at + X];
    const qy = edges[q + Y] - edges[at + Y];
    const tx = edges[at + TX];
    const ty = edges[at + TY];
    const h = qy * tx - qx * ty;
    const u = qx * tx + qy * ty - s;
    this.#c2 = 1 / (2 * h);
    this.#c1 = -u / h;
    this.#c0 = (u * u + h * h) / (2 * h);
    return h > 0;
  }
}

/** Root of c2·u² + c1·u + c0 at which it rises, within 0 … width; the nearer end where there is none. */
function risingRoot(c2: number, c1: number, c0: number, width: number): number {
  if (c0 >= 0) {
    return 0;
  }
  if ((c2 * width + c1) * width + c0 <= 0) {
    return width;
  }
  const root = Math.sqrt(Math.max(0, c1 * c1 - 4 * c2 * c0));
  const u = c1 >= 0 ? (-2 * c0) / (c1 + root) : (root - c1) / (2 * c2);
  return Math.min(Math.max(u, 0), width);
}
