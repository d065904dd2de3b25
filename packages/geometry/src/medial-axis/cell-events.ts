import type { Boundary } from './boundary.ts';
import { STRAIGHT_RAD } from './tolerances.ts';

/**
 * Numbers kept for each disc in one array: x, y, clearance, and for events the clearance at which they are due. What belongs together lies
 * together, because a large boundary's collapse jumps about in memory.
 */
export const DISC_STRIDE = 4;

/** Numbers kept for each edge beside each other: start, unit direction, length. */
const EDGE_STRIDE = 5;

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
export function cellEvents(boundary: Boundary, nodes: Float64Array, events: Float64Array): CellEvents {
  const { count: n, next: nextPoint, previous: previousPoint } = boundary;
  const edges = edgesSideBySide(boundary);

  // radius of the disc that touches edge b at arc length s and also a neighbour, as c2·u² + c1·u + c0 with u = s − low
  let c2 = 0;
  let c1 = 0;
  let c0 = 0;
  const radiusAlongEdge = (b: number, low: number, other: number): boolean => {
    const bx = edges[b * EDGE_STRIDE];
    const by = edges[b * EDGE_STRIDE + 1];
    const btx = edges[b * EDGE_STRIDE + 2];
    const bty = edges[b * EDGE_STRIDE + 3];
    if (other < n) {
      const otx = edges[other * EDGE_STRIDE + 2];
      const oty = edges[other * EDGE_STRIDE + 3];
      const dx = btx - otx;
      const dy = bty - oty;
      const share = (dx * dx + dy * dy) / 2;
      if (2 * share < STRAIGHT_RAD * STRAIGHT_RAD) {
        return false;
      }
      // from whichever end of the other edge meets this one, so that neighbours start at exactly zero
      const p = EDGE_STRIDE * (nextPoint[other] === b ? b : other);
      const ox = bx - edges[p] + low * btx;
      const oy = by - edges[p + 1] + low * bty;
      c2 = 0;
      c1 = (bty * otx - btx * oty) / share;
      c0 = (oy * otx - ox * oty) / share;
      return true;
    }
    const q = EDGE_STRIDE * (other - n);
    const qx = edges[q] - bx;
    const qy = edges[q + 1] - by;
    const h = qy * btx - qx * bty;
    if (!(h > 0)) {
      return false;
    }
    const u = qx * btx + qy * bty - low;
    c2 = 1 / (2 * h);
    c1 = -u / h;
    c0 = (u * u + h * h) / (2 * h);
    return true;
  };

  const meetOnEdge = (i: number, b: number, left: number, right: number, from: number, to: number): void => {
    const event = i * DISC_STRIDE;
    const isOwnLeft = left === n + b;
    const isOwnRight = right === n + nextPoint[b];
    if (isOwnLeft && isOwnRight) {
      events[event + 2] = Infinity;
      return;
    }
    const bx = edges[b * EDGE_STRIDE];
    const by = edges[b * EDGE_STRIDE + 1];
    const btx = edges[b * EDGE_STRIDE + 2];
    const bty = edges[b * EDGE_STRIDE + 3];
    const f = from * DISC_STRIDE;
    const t = to * DISC_STRIDE;
    const low = isOwnLeft ? 0 : (nodes[f] - bx) * btx + (nodes[f + 1] - by) * bty;
    const high = isOwnRight ? edges[b * EDGE_STRIDE + 4] : (nodes[t] - bx) * btx + (nodes[t + 1] - by) * bty;
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
      events[event + 2] = Infinity;
      return;
    }
    const at = low + u;
    events[event] = bx + at * btx - r * bty;
    events[event + 1] = by + at * bty + r * btx;
    events[event + 2] = r;
  };

  // one over the radius of the disc that touches vertex v in direction d and also a neighbour, as k0 + kx·dx + ky·dy
  let k0 = 0;
  let kx = 0;
  let ky = 0;
  const curvatureAtVertex = (v: number, other: number): boolean => {
    const vx = edges[v * EDGE_STRIDE];
    const vy = edges[v * EDGE_STRIDE + 1];
    if (other < n) {
      const o = other * EDGE_STRIDE;
      const otx = edges[o + 2];
      const oty = edges[o + 3];
      const h = (vy - edges[o + 1]) * otx - (vx - edges[o]) * oty;
      if (!(h > 0)) {
        return false;
      }
      k0 = 1 / h;
      kx = oty / h;
      ky = -otx / h;
      return true;
    }
    const q = EDGE_STRIDE * (other - n);
    const qx = edges[q] - vx;
    const qy = edges[q + 1] - vy;
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
    const event = i * DISC_STRIDE;
    const before = previousPoint[v];
    const isOwnLeft = left === before;
    const isOwnRight = right === v;
    if (isOwnLeft && isOwnRight) {
      events[event + 2] = Infinity;
      return;
    }
    const hasLeft = !isOwnLeft && curvatureAtVertex(v, left);
    const a0 = k0;
    const ax = kx;
    const ay = ky;
    const hasRight = !isOwnRight && curvatureAtVertex(v, right);
    const vx = edges[v * EDGE_STRIDE];
    const vy = edges[v * EDGE_STRIDE + 1];
    let lowX = -edges[before * EDGE_STRIDE + 3];
    let lowY = edges[before * EDGE_STRIDE + 2];
    if (!isOwnLeft) {
      const f = from * DISC_STRIDE;
      lowX = (nodes[f] - vx) / nodes[f + 2];
      lowY = (nodes[f + 1] - vy) / nodes[f + 2];
    }
    let highX = -edges[v * EDGE_STRIDE + 3];
    let highY = edges[v * EDGE_STRIDE + 2];
    if (!isOwnRight) {
      const t = to * DISC_STRIDE;
      highX = (nodes[t] - vx) / nodes[t + 2];
      highY = (nodes[t + 1] - vy) / nodes[t + 2];
    }
    // directions of the neighbours, where they are edges
    const l = left < n ? left * EDGE_STRIDE : 0;
    const ltx = edges[l + 2];
    const lty = edges[l + 3];
    const r = right < n ? right * EDGE_STRIDE : 0;
    const rtx = edges[r + 2];
    const rty = edges[r + 3];
    // beyond a line's own normal lies the other branch of the parabola: the first branch ends there, at infinity
    const isLeftCut = left < n && !isOwnLeft && isBetween(lowX, lowY, -lty, ltx, highX, highY);
    const isRightCut = right < n && !isOwnRight && isBetween(lowX, lowY, -rty, rtx, highX, highY);
    if (
      (isLeftCut && isOwnRight) ||
      (isRightCut && isOwnLeft) ||
      (isLeftCut && isRightCut && ltx * rty - lty * rtx <= 0)
    ) {
      events[event + 2] = Infinity;
      return;
    }
    if (isRightCut) {
      lowX = -rty;
      lowY = rtx;
    }
    if (isLeftCut) {
      highX = -lty;
      highY = ltx;
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
    if (!(curvature > 0)) {
      events[event + 2] = Infinity;
      return;
    }
    const radius = 1 / curvature;
    events[event] = vx + radius * dx;
    events[event + 1] = vy + radius * dy;
    events[event + 2] = radius;
  };

  return { meetOnEdge, meetOnVertex };
}

function edgesSideBySide(boundary: Boundary): Float64Array {
  const { count, x, y, tx, ty, length } = boundary;
  const edges = new Float64Array(EDGE_STRIDE * count);
  for (let i = 0; i < count; i++) {
    edges[EDGE_STRIDE * i] = x[i];
    edges[EDGE_STRIDE * i + 1] = y[i];
    edges[EDGE_STRIDE * i + 2] = tx[i];
    edges[EDGE_STRIDE * i + 3] = ty[i];
    edges[EDGE_STRIDE * i + 4] = length[i];
  }
  return edges;
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
