/**
 * Corners of a window at most; a cut that would make more is skipped, which only leaves the window larger.
 */
const MAX_CORNERS = 24;

/**
 * Relative to their distance: shorter sides separate nothing, because their direction is known to 1e-16 over
 * this share only.
 */
const SHORT_SIDE_REL_TOL = 1e-6;

/**
 * The convex set of points where the far end of a diameter of an empty disc may lie, as seen from one end of
 * it: a cone less the half-planes beyond the boundary seen so far. Kept as corners relative to that end,
 * which is the first corner.
 */
export class Window {
  #x = new Float64Array(MAX_CORNERS + 2);
  #y = new Float64Array(MAX_CORNERS + 2);
  #spareX = new Float64Array(MAX_CORNERS + 2);
  #spareY = new Float64Array(MAX_CORNERS + 2);
  readonly #beyond = new Float64Array(MAX_CORNERS + 2);
  #size = 0;
  /**
   * Sides as n·p ≤ limit, n pointing outwards, without short ones; their number is -1 until a box asks for
   * them.
   */
  readonly #outX = new Float64Array(MAX_CORNERS + 2);
  readonly #outY = new Float64Array(MAX_CORNERS + 2);
  readonly #limit = new Float64Array(MAX_CORNERS + 2);
  #sides = 0;
  /** Largest distance of a corner. */
  reach = 0;
  /** Extents found by `measure`. */
  minU = 0;
  maxU = 0;
  minV = 0;
  maxV = 0;

  /**
   * Starts over with the cone from unit direction a, turning from +y to +x by less than half a turn, to unit
   * direction b, out to `reach`.
   */
  open(ax: number, ay: number, bx: number, by: number, reach: number): void {
    // a + b points to the middle, and so does their difference turned by 90°, also where a and b are opposite
    const mx = ax + bx - (by - ay);
    const my = ay + by + (bx - ax);
    const m = Math.sqrt(mx * mx + my * my);
    const wx = (reach * mx) / m;
    const wy = (reach * my) / m;
    const x = this.#x;
    const y = this.#y;
    x[0] = 0;
    y[0] = 0;
    x[1] = reach * bx;
    y[1] = reach * by;
    x[2] = x[1] + wx;
    y[2] = y[1] + wy;
    x[4] = reach * ax;
    y[4] = reach * ay;
    x[3] = x[4] + wx;
    y[3] = y[4] + wy;
    this.#size = 5;
    this.reach = 2 * reach;
    this.#sides = -1;
  }

  /** Whether no further cut is taken. */
  get isFull(): boolean {
    return this.#size >= MAX_CORNERS;
  }

  /** Number of corners. */
  get size(): number {
    return this.#size;
  }

  cornerX(i: number): number {
    return this.#x[i];
  }

  cornerY(i: number): number {
    return this.#y[i];
  }

  /** Removes what lies beyond p·q = limit, limit > 0; whether anything did. */
  cut(qx: number, qy: number, limit: number): boolean {
    const x = this.#x;
    const y = this.#y;
    const beyond = this.#beyond;
    const size = this.#size;
    let most = 0;
    for (let i = 0; i < size; i++) {
      const s = x[i] * qx + y[i] * qy - limit;
      beyond[i] = s;
      if (s > most) {
        most = s;
      }
    }
    if (most <= 0 || size >= MAX_CORNERS) {
      return false;
    }
    const toX = this.#spareX;
    const toY = this.#spareY;
    let made = 0;
    let reach2 = 0;
    let before = size - 1;
    for (let i = 0; i < size; i++) {
      const s = beyond[i];
      const r = beyond[before];
      if (s > 0 !== r > 0) {
        // from the end nearer to the cut, so that far corners leave no error in near ones
        const isFromBefore = Math.abs(r) < Math.abs(s);
        const a = isFromBefore ? before : i;
        const b = isFromBefore ? i : before;
        const t = isFromBefore ? r / (r - s) : s / (s - r);
        const px = x[a] + t * (x[b] - x[a]);
        const py = y[a] + t * (y[b] - y[a]);
        toX[made] = px;
        toY[made++] = py;
        const d = px * px + py * py;
        if (d > reach2) {
          reach2 = d;
        }
      }
      if (s <= 0) {
        const px = x[i];
        const py = y[i];
        toX[made] = px;
        toY[made++] = py;
        const d = px * px + py * py;
        if (d > reach2) {
          reach2 = d;
        }
      }
      before = i;
    }
    this.#spareX = x;
    this.#spareY = y;
    this.#x = toX;
    this.#y = toY;
    this.#size = made;
    this.reach = Math.sqrt(reach2);
    this.#sides = -1;
    return true;
  }

  #findSides(): void {
    const x = this.#x;
    const y = this.#y;
    const size = this.#size;
    let sides = 0;
    let px = x[size - 1];
    let py = y[size - 1];
    for (let i = 0; i < size; i++) {
      // the corners turn from +x to +y, so that the outside of a side along (ex, ey) is at (ey, -ex)
      const ex = x[i] - px;
      const ey = y[i] - py;
      if (ex * ex + ey * ey > SHORT_SIDE_REL_TOL * SHORT_SIDE_REL_TOL * (px * px + py * py)) {
        this.#outX[sides] = ey;
        this.#outY[sides] = -ex;
        this.#limit[sides++] = ey * px - ex * py;
      }
      px = x[i];
      py = y[i];
    }
    this.#sides = sides;
  }

  /** Sets the extents along a unit direction and across it, a quarter turn from +x towards +y on. */
  measure(ux: number, uy: number): void {
    const x = this.#x;
    const y = this.#y;
    const size = this.#size;
    // the first corner is at 0
    let minU = 0;
    let maxU = 0;
    let minV = 0;
    let maxV = 0;
    for (let i = 0; i < size; i++) {
      const u = x[i] * ux + y[i] * uy;
      const v = y[i] * ux - x[i] * uy;
      if (u < minU) {
        minU = u;
      }
      if (u > maxU) {
        maxU = u;
      }
      if (v < minV) {
        minV = v;
      }
      if (v > maxV) {
        maxV = v;
      }
    }
    this.minU = minU;
    this.maxU = maxU;
    this.minV = minV;
    this.maxV = maxV;
  }

  /**
   * Whether a box, given by centre, unit direction and half extents, may meet the window: no side of either
   * separates them.
   */
  meetsBox(cx: number, cy: number, ux: number, uy: number, halfU: number, halfV: number): boolean {
    const cu = cx * ux + cy * uy;
    const cv = cy * ux - cx * uy;
    const reach = this.reach;
    if (cu - halfU > reach || cu + halfU < -reach || cv - halfV > reach || cv + halfV < -reach) {
      return false;
    }
    this.measure(ux, uy);
    if (
      this.minU > cu + halfU ||
      this.maxU < cu - halfU ||
      this.minV > cv + halfV ||
      this.maxV < cv - halfV
    ) {
      return false;
    }
    if (this.#sides < 0) {
      this.#findSides();
    }
    const outX = this.#outX;
    const outY = this.#outY;
    const limit = this.#limit;
    const sides = this.#sides;
    for (let i = 0; i < sides; i++) {
      const nx = outX[i];
      const ny = outY[i];
      const out = nx * cx + ny * cy - limit[i];
      if (out > 0 && out > Math.abs(nx * ux + ny * uy) * halfU + Math.abs(ny * ux - nx * uy) * halfV) {
        return false;
      }
    }
    return true;
  }

  /** Whether all corners lie beyond a line, where n·p > limit. */
  isBeyond(nx: number, ny: number, limit: number): boolean {
    const x = this.#x;
    const y = this.#y;
    const size = this.#size;
    for (let i = 0; i < size; i++) {
      if (x[i] * nx + y[i] * ny <= limit) {
        return false;
      }
    }
    return true;
  }

  /** Whether a point lies inside, or outside by at most `slack`. */
  holds(px: number, py: number, slack: number): boolean {
    return this.meetsBox(px, py, 1, 0, slack, slack);
  }
}
