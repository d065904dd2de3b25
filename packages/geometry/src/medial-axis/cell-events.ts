import type { Boundary } from './boundary.ts';
import { STRAIGHT_RAD } from './tolerances.ts';

/** Points with their clearances, mm. */
export interface Discs {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly r: Float64Array;
}

/** Works out where the cell of one site closes between its two neighbours; the result is written to the events given. */
export interface CellEvents {
  /**
   * Sets event i: on edge b, between the sites left and right, whose bisectors with b start at nodes `from` and `to`. Radius infinity
   * where the cell does not close.
   */
  readonly meetOnEdge: (i: number, b: number, left: number, right: number, from: number, to: number) => void;
  /** The same on reflex point v. */
  readonly meetOnVertex: (
    i: number,
    v: number,
    left: number,
    right: number,
    from: number,
    to: number,
  ) => void;
}

/** Each event is solved from its three sites directly, so that errors do not add up along the axis. */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: an algorithm kernel: its steps share the arrays and the coefficients
export function cellEvents(boundary: Boundary, nodes: Discs, events: Discs): CellEvents {
  const { count: n, x, y, tx, ty, length, next: nextPoint, previous: previousPoint } = boundary;

  // radius of the disc that touches edge b at arc length s and also a neighbour, as c2·u² + c1·u + c0 with u = s − low
  let c2 = 0;
  let c1 = 0;
  let c0 = 0;
  const radiusAlongEdge = (b: number, low: number, other: number): boolean => {
    if (other < n) {
      const dx = tx[b] - tx[other];
      const dy = ty[b] - ty[other];
      const share = (dx * dx + dy * dy) / 2;
      if (2 * share < STRAIGHT_RAD * STRAIGHT_RAD) {
        return false;
      }
      // from whichever end of the other edge meets this one, so that neighbours start at exactly zero
      const p = nextPoint[other] === b ? b : other;
      const ox = x[b] - x[p] + low * tx[b];
      const oy = y[b] - y[p] + low * ty[b];
      c2 = 0;
      c1 = (ty[b] * tx[other] - tx[b] * ty[other]) / share;
      c0 = (oy * tx[other] - ox * ty[other]) / share;
      return true;
    }
    const q = other - n;
    const qx = x[q] - x[b];
    const qy = y[q] - y[b];
    const h = qy * tx[b] - qx * ty[b];
    if (!(h > 0)) {
      return false;
    }
    const u = qx * tx[b] + qy * ty[b] - low;
    c2 = 1 / (2 * h);
    c1 = -u / h;
    c0 = (u * u + h * h) / (2 * h);
    return true;
  };

  const meetOnEdge = (i: number, b: number, left: number, right: number, from: number, to: number): void => {
    const isOwnLeft = left === n + b;
    const isOwnRight = right === n + nextPoint[b];
    if (isOwnLeft && isOwnRight) {
      events.r[i] = Infinity;
      return;
    }
    const low = isOwnLeft ? 0 : (nodes.x[from] - x[b]) * tx[b] + (nodes.y[from] - y[b]) * ty[b];
    const high = isOwnRight ? length[b] : (nodes.x[to] - x[b]) * tx[b] + (nodes.y[to] - y[b]) * ty[b];
    const width = Math.max(0, high - low);
    const hasLeft = !isOwnLeft && radiusAlongEdge(b, low, left);
    const a2 = c2;
    const a1 = c1;
    const a0 = c0;
    const hasRight = !isOwnRight && radiusAlongEdge(b, low, right);
    let u = 0;
    let r = 0;
    if (hasLeft && hasRight) {
      u = risingRoot(a2 - c2, a1 - c1, a0 - c0, width);
      // the flatter of the two functions feels least of an error in u
      r =
        Math.abs(2 * a2 * u + a1) < Math.abs(2 * c2 * u + c1)
          ? (a2 * u + a1) * u + a0
          : (c2 * u + c1) * u + c0;
    } else if (hasRight) {
      r = c0;
    } else if (hasLeft) {
      u = width;
      r = (a2 * u + a1) * u + a0;
    } else {
      events.r[i] = Infinity;
      return;
    }
    const at = low + u;
    events.r[i] = r;
    events.x[i] = x[b] + at * tx[b] - r * ty[b];
    events.y[i] = y[b] + at * ty[b] + r * tx[b];
  };

  // one over the radius of the disc that touches vertex v in direction d and also a neighbour, as k0 + kx·dx + ky·dy
  let k0 = 0;
  let kx = 0;
  let ky = 0;
  const curvatureAtVertex = (v: number, other: number): boolean => {
    if (other < n) {
      const h = (y[v] - y[other]) * tx[other] - (x[v] - x[other]) * ty[other];
      if (!(h > 0)) {
        return false;
      }
      k0 = 1 / h;
      kx = ty[other] / h;
      ky = -tx[other] / h;
      return true;
    }
    const qx = x[other - n] - x[v];
    const qy = y[other - n] - y[v];
    const d2 = qx * qx + qy * qy;
    if (d2 === 0) {
      return false;
    }
    k0 = 0;
    kx = (2 * qx) / d2;
    ky = (2 * qy) / d2;
    return true;
  };

  // biome-ignore lint/complexity/noExcessiveLinesPerFunction: one equation with its cases
  const meetOnVertex = (
    i: number,
    v: number,
    left: number,
    right: number,
    from: number,
    to: number,
  ): void => {
    const before = previousPoint[v];
    const isOwnLeft = left === before;
    const isOwnRight = right === v;
    if (isOwnLeft && isOwnRight) {
      events.r[i] = Infinity;
      return;
    }
    const hasLeft = !isOwnLeft && curvatureAtVertex(v, left);
    const a0 = k0;
    const ax = kx;
    const ay = ky;
    const hasRight = !isOwnRight && curvatureAtVertex(v, right);
    let lowX = -ty[before];
    let lowY = tx[before];
    if (!isOwnLeft) {
      lowX = (nodes.x[from] - x[v]) / nodes.r[from];
      lowY = (nodes.y[from] - y[v]) / nodes.r[from];
    }
    let highX = -ty[v];
    let highY = tx[v];
    if (!isOwnRight) {
      highX = (nodes.x[to] - x[v]) / nodes.r[to];
      highY = (nodes.y[to] - y[v]) / nodes.r[to];
    }
    // beyond a line's own normal lies the other branch of the parabola: the first branch ends there, at infinity
    const isLeftCut = left < n && !isOwnLeft && isBetween(lowX, lowY, -ty[left], tx[left], highX, highY);
    const isRightCut = right < n && !isOwnRight && isBetween(lowX, lowY, -ty[right], tx[right], highX, highY);
    if (
      (isLeftCut && isOwnRight) ||
      (isRightCut && isOwnLeft) ||
      (isLeftCut && isRightCut && tx[left] * ty[right] - ty[left] * tx[right] <= 0)
    ) {
      events.r[i] = Infinity;
      return;
    }
    if (isRightCut) {
      lowX = -ty[right];
      lowY = tx[right];
    }
    if (isLeftCut) {
      highX = -ty[left];
      highY = tx[left];
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
      const l = a0 + ax * dx + ay * dy;
      const r = k0 + kx * dx + ky * dy;
      curvature = Math.abs(ax * dy - ay * dx) < Math.abs(kx * dy - ky * dx) ? l : r;
    } else if (hasRight) {
      curvature = k0 + kx * dx + ky * dy;
    } else if (hasLeft) {
      dx = highX;
      dy = highY;
      curvature = a0 + ax * dx + ay * dy;
    }
    if (!(curvature > 0)) {
      events.r[i] = Infinity;
      return;
    }
    const r = 1 / curvature;
    events.r[i] = r;
    events.x[i] = x[v] + r * dx;
    events.y[i] = y[v] + r * dy;
  };

  return { meetOnEdge, meetOnVertex };
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
