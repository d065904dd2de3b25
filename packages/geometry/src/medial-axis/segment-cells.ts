import { type Cells, GROWS_X, MATE, R, SITE, SITE_TX, SITE_TY, SITE_X, SITE_Y, X, Y } from './cell-layout.ts';
import { STRAIGHT_TOL_RAD } from './tolerances.ts';

/** 1 − cos of {@link STRAIGHT_TOL_RAD}: below it two directions are one. */
const STRAIGHT_COSINE_GAP: number = (STRAIGHT_TOL_RAD * STRAIGHT_TOL_RAD) / 2;

/**
 * Finds the disc in which a segment cell closes between its two neighbours. Along the segment, the radius of
 * the disc that also touches a neighbour is linear in arc length where the neighbour is a segment, quadratic
 * where it is a vertex. Each disc is solved from its three sites, so that errors do not add up along the
 * axis.
 */
export class SegmentCells {
  readonly #numbers: Float64Array;
  readonly #links: Int32Array;
  /** Number of edges; sites from it on are vertices. */
  readonly #count: number;
  /** Radius of the disc that touches the segment at arc length s + u and a neighbour: c2·u² + c1·u + c0. */
  #c2 = 0;
  #c1 = 0;
  #c0 = 0;

  constructor({ numbers, links }: Cells, count: number) {
    this.#numbers = numbers;
    this.#links = links;
    this.#count = count;
  }

  /**
   * Sets the disc in which the segment cell at place `at` closes between the sites of the cells at `left` and
   * `right`.
   */
  meet(at: number, left: number, right: number): void {
    const links = this.#links;
    const n = this.#count;
    const leftSite = links[2 * left + SITE];
    const rightSite = links[2 * right + SITE];
    const isOwnLeft = leftSite === n + links[2 * at + SITE];
    const isOwnRight = rightSite === links[2 * at + MATE];
    if (isOwnLeft && isOwnRight) {
      this.#numbers[at + R] = Infinity;
    } else if (isOwnLeft) {
      this.#meetAtEnd(at, 0, right);
    } else if (isOwnRight) {
      this.#meetAtEnd(at, Math.max(this.#foot(at, right + SITE_X), this.#foot(at, left + GROWS_X)), left);
    } else if (leftSite < n && rightSite < n) {
      this.#meetBetweenLines(at, left, right);
    } else {
      this.#meetBetween(at, left, right);
    }
  }

  /** Where one neighbour is an end of the segment itself, the disc touches there, at arc length s. */
  #meetAtEnd(at: number, s: number, other: number): void {
    this.#touch(at, s, this.#alongSite(at, s, other) ? this.#c0 : Infinity);
  }

  /**
   * Between two segments, where most cells close: both radii are kept as fractions, (slope·u + start) /
   * share, which saves divisions.
   */
  #meetBetweenLines(at: number, left: number, right: number): void {
    const numbers = this.#numbers;
    const links = this.#links;
    const x = numbers[at + SITE_X];
    const y = numbers[at + SITE_Y];
    const tx = numbers[at + SITE_TX];
    const ty = numbers[at + SITE_TY];
    const low = this.#foot(at, left + GROWS_X);
    const width = Math.max(0, this.#foot(at, at + GROWS_X) - low);
    const leftX = numbers[left + SITE_TX];
    const leftY = numbers[left + SITE_TY];
    const rightX = numbers[right + SITE_TX];
    const rightY = numbers[right + SITE_TY];
    // from the end of a neighbour that meets this segment, so that adjacent segments start at exactly 0
    const start = this.#count + links[2 * at + SITE];
    const p = links[2 * left + MATE] === start ? at : left;
    const q = links[2 * right + MATE] === start ? at : right;
    const leftShare = ((tx - leftX) * (tx - leftX) + (ty - leftY) * (ty - leftY)) / 2;
    const rightShare = ((tx - rightX) * (tx - rightX) + (ty - rightY) * (ty - rightY)) / 2;
    const leftSlope = ty * leftX - tx * leftY;
    const rightSlope = ty * rightX - tx * rightY;
    const leftStart =
      (y - numbers[p + SITE_Y] + low * ty) * leftX - (x - numbers[p + SITE_X] + low * tx) * leftY;
    const rightStart =
      (y - numbers[q + SITE_Y] + low * ty) * rightX - (x - numbers[q + SITE_X] + low * tx) * rightY;
    const hasLeft = leftShare >= STRAIGHT_COSINE_GAP;
    const hasRight = rightShare >= STRAIGHT_COSINE_GAP;
    let u = hasLeft ? width : 0;
    if (hasLeft && hasRight) {
      const rise = leftSlope * rightShare - rightSlope * leftShare;
      const gap = leftStart * rightShare - rightStart * leftShare;
      u = gap >= 0 ? 0 : rise * width + gap <= 0 ? width : Math.min(-gap / rise, width);
    }
    // the flatter function suffers least from an error in u
    const isByLeft =
      hasLeft && !(hasRight && Math.abs(leftSlope) * rightShare >= Math.abs(rightSlope) * leftShare);
    const r = isByLeft
      ? (leftSlope * u + leftStart) / leftShare
      : hasRight
        ? (rightSlope * u + rightStart) / rightShare
        : Infinity;
    numbers[at + X] = x + (low + u) * tx - r * ty;
    numbers[at + Y] = y + (low + u) * ty + r * tx;
    numbers[at + R] = r;
  }

  #meetBetween(at: number, left: number, right: number): void {
    const low = this.#foot(at, left + GROWS_X);
    const width = Math.max(0, this.#foot(at, at + GROWS_X) - low);
    const hasLeft = this.#alongSite(at, low, left);
    const a2 = this.#c2;
    const a1 = this.#c1;
    const a0 = this.#c0;
    const hasRight = this.#alongSite(at, low, right);
    const c2 = this.#c2;
    const c1 = this.#c1;
    const c0 = this.#c0;
    if (!(hasLeft && hasRight)) {
      const r = hasRight ? c0 : hasLeft ? (a2 * width + a1) * width + a0 : Infinity;
      this.#touch(at, hasLeft ? low + width : low, r);
      return;
    }
    const u = risingRoot(a2 - c2, a1 - c1, a0 - c0, width);
    // the flatter function suffers least from an error in u
    const isLeftFlatter = Math.abs(2 * a2 * u + a1) < Math.abs(2 * c2 * u + c1);
    this.#touch(at, low + u, isLeftFlatter ? (a2 * u + a1) * u + a0 : (c2 * u + c1) * u + c0);
  }

  /** Arc length on the segment of the foot of the point kept at a place. */
  #foot(at: number, point: number): number {
    const numbers = this.#numbers;
    return (
      (numbers[point] - numbers[at + SITE_X]) * numbers[at + SITE_TX] +
      (numbers[point + 1] - numbers[at + SITE_Y]) * numbers[at + SITE_TY]
    );
  }

  /** Sets the disc to that of radius r which touches the segment at arc length s. */
  #touch(at: number, s: number, r: number): void {
    const numbers = this.#numbers;
    const tx = numbers[at + SITE_TX];
    const ty = numbers[at + SITE_TY];
    numbers[at + X] = numbers[at + SITE_X] + s * tx - r * ty;
    numbers[at + Y] = numbers[at + SITE_Y] + s * ty + r * tx;
    numbers[at + R] = r;
  }

  /**
   * Sets the coefficients of the radius for another site; whether that site limits it, as a parallel segment
   * that runs the same way does not.
   */
  #alongSite(at: number, s: number, other: number): boolean {
    const numbers = this.#numbers;
    const links = this.#links;
    const tx = numbers[at + SITE_TX];
    const ty = numbers[at + SITE_TY];
    if (links[2 * other + SITE] < this.#count) {
      const otherX = numbers[other + SITE_TX];
      const otherY = numbers[other + SITE_TY];
      const share = ((tx - otherX) * (tx - otherX) + (ty - otherY) * (ty - otherY)) / 2;
      // from the end of the other segment that meets this one, so that adjacent segments start at exactly 0
      const p = links[2 * other + MATE] === this.#count + links[2 * at + SITE] ? at : other;
      const px = numbers[at + SITE_X] - numbers[p + SITE_X] + s * tx;
      const py = numbers[at + SITE_Y] - numbers[p + SITE_Y] + s * ty;
      this.#c2 = 0;
      this.#c1 = (ty * otherX - tx * otherY) / share;
      this.#c0 = (py * otherX - px * otherY) / share;
      return share >= STRAIGHT_COSINE_GAP;
    }
    const qx = numbers[other + SITE_X] - numbers[at + SITE_X];
    const qy = numbers[other + SITE_Y] - numbers[at + SITE_Y];
    const h = qy * tx - qx * ty;
    const u = qx * tx + qy * ty - s;
    this.#c2 = 1 / (2 * h);
    this.#c1 = -u / h;
    this.#c0 = (u * u + h * h) / (2 * h);
    return h > 0;
  }
}

/** The root of c2·u² + c1·u + c0 at which it rises, clamped to 0 … width. */
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
