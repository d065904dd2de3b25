import type { Boundary } from './boundary.ts';
import type { CutBoundary } from './cut-at-necks.ts';
import { EventQueue } from './event-queue.ts';
import type { Necks } from './find-necks.ts';
import { LEVEL_SHARE, STRAIGHT_RAD } from './tolerances.ts';

/** The linked graph that the collapse makes; see `MedialAxis` for what the arrays hold. */
export interface AxisGraph {
  readonly nodeX: Float64Array;
  readonly nodeY: Float64Array;
  readonly nodeR: Float64Array;
  readonly edgeFrom: Int32Array;
  readonly edgeTo: Int32Array;
  readonly edgeLeft: Int32Array;
  readonly edgeRight: Int32Array;
  readonly nextHalf: Int32Array;
  /** Number of first nodes that are necks. */
  readonly neckCount: number;
}

/**
 * Grows the axis of every piece from its leaves: neighbours along the piece's boundary meet in bisectors on which the clearance rises; the
 * site whose two bisectors meet at the least clearance has its cell closed there, and its neighbours become neighbours. No piece has a
 * least clearance inside, so nothing else can happen, and rounding can't make the graph inconsistent. O(n log n).
 */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: an algorithm kernel: its steps share a score of arrays
export function collapsePieces(boundary: Boundary, necks: Necks, cut: CutBoundary): AxisGraph {
  const { count: n, x, y, tx, ty, length, next: nextPoint, previous: previousPoint } = boundary;
  const { count: m, site, next: cutNext, neckAfter } = cut;
  const nodeX = new Float64Array(2 * m);
  const nodeY = new Float64Array(2 * m);
  const nodeR = new Float64Array(2 * m);
  const edgeFrom = new Int32Array(2 * m);
  const edgeTo = new Int32Array(2 * m);
  const edgeLeft = new Int32Array(2 * m);
  const edgeRight = new Int32Array(2 * m);
  const nextHalf = new Int32Array(4 * m);
  /** Half-edge whose successor is the way up along each edge. */
  const beforeUp = new Int32Array(2 * m);
  let nodeCount = necks.count;
  let edgeCount = 0;
  const next = cutNext.slice();
  const previous = new Int32Array(m);
  /** Edge that grows between an instance and its successor. */
  const growing = new Int32Array(m);
  const queue = new EventQueue(m);
  const eventX = new Float64Array(m);
  const eventY = new Float64Array(m);
  const eventR = new Float64Array(m);

  for (let k = 0; k < necks.count; k++) {
    const v = necks.vertex[k];
    nodeX[k] = (x[v] + necks.endX[k]) / 2;
    nodeY[k] = (y[v] + necks.endY[k]) / 2;
    nodeR[k] = Math.hypot(necks.endX[k] - x[v], necks.endY[k] - y[v]) / 2;
  }
  const otherSide = new Int32Array(necks.count).fill(-1);
  for (let i = 0; i < m; i++) {
    previous[next[i]] = i;
    const e = edgeCount++;
    growing[i] = e;
    edgeLeft[e] = site[i];
    edgeRight[e] = site[next[i]];
    const neck = neckAfter[i];
    if (neck < 0) {
      const node = nodeCount++;
      const s = site[i];
      const p = s < n ? nextPoint[s] : s - n;
      nodeX[node] = x[p];
      nodeY[node] = y[p];
      edgeFrom[e] = node;
      nextHalf[2 * e + 1] = 2 * e;
      beforeUp[e] = 2 * e + 1;
    } else {
      edgeFrom[e] = neck;
      const f = otherSide[neck];
      if (f < 0) {
        otherSide[neck] = e;
      } else {
        nextHalf[2 * e + 1] = 2 * f;
        nextHalf[2 * f + 1] = 2 * e;
        beforeUp[f] = 2 * e + 1;
        beforeUp[e] = 2 * f + 1;
      }
    }
  }

  /** Sets the event of instance i: where its own cell closes. */
  const meet = (i: number): void => {
    const left = previous[i];
    const right = next[i];
    const from = edgeFrom[growing[left]];
    const to = edgeFrom[growing[i]];
    const s = site[i];
    if (s < n) {
      meetOnEdge(i, s, site[left], site[right], from, to);
    } else {
      meetOnVertex(i, s - n, site[left], site[right], from, to);
    }
    const later = nodeR[from] > nodeR[to] ? from : to;
    if (!(eventR[i] >= nodeR[later] * (1 - LEVEL_SHARE))) {
      // several sites meet in one disc already found: the cell closes there
      eventX[i] = nodeX[later];
      eventY[i] = nodeY[later];
      eventR[i] = nodeR[later];
    }
    queue.set(i, Math.max(eventR[i], nodeR[later]));
  };

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
      eventR[i] = Infinity;
      return;
    }
    const low = isOwnLeft ? 0 : (nodeX[from] - x[b]) * tx[b] + (nodeY[from] - y[b]) * ty[b];
    const high = isOwnRight ? length[b] : (nodeX[to] - x[b]) * tx[b] + (nodeY[to] - y[b]) * ty[b];
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
      eventR[i] = Infinity;
      return;
    }
    const at = low + u;
    eventR[i] = r;
    eventX[i] = x[b] + at * tx[b] - r * ty[b];
    eventY[i] = y[b] + at * ty[b] + r * tx[b];
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
      eventR[i] = Infinity;
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
      lowX = (nodeX[from] - x[v]) / nodeR[from];
      lowY = (nodeY[from] - y[v]) / nodeR[from];
    }
    let highX = -ty[v];
    let highY = tx[v];
    if (!isOwnRight) {
      highX = (nodeX[to] - x[v]) / nodeR[to];
      highY = (nodeY[to] - y[v]) / nodeR[to];
    }
    // beyond a line's own normal lies the other branch of the parabola: the first branch ends there, at infinity
    const isLeftCut = left < n && !isOwnLeft && isBetween(lowX, lowY, -ty[left], tx[left], highX, highY);
    const isRightCut = right < n && !isOwnRight && isBetween(lowX, lowY, -ty[right], tx[right], highX, highY);
    if (
      (isLeftCut && isOwnRight) ||
      (isRightCut && isOwnLeft) ||
      (isLeftCut && isRightCut && tx[left] * ty[right] - ty[left] * tx[right] <= 0)
    ) {
      eventR[i] = Infinity;
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
      eventR[i] = Infinity;
      return;
    }
    const r = 1 / curvature;
    eventR[i] = r;
    eventX[i] = x[v] + r * dx;
    eventY[i] = y[v] + r * dy;
  };

  const isSpoke = (a: number, b: number): boolean =>
    a < n ? b === n + nextPoint[a] || b === n + a : b < n && (a === n + b || a === n + nextPoint[b]);

  /** Of the last three instances, which all close in one node, one beside a spoke if there is: only that puts the node on the spoke exactly. */
  const besideSpoke = (i: number): number => {
    for (const b of [i, next[i], previous[i]]) {
      if (eventR[b] < Infinity && (isSpoke(site[previous[b]], site[b]) || isSpoke(site[b], site[next[b]]))) {
        return b;
      }
    }
    return i;
  };

  /** Closes the cell of instance b at its event and lets its neighbours meet. */
  const close = (b: number): void => {
    const a = previous[b];
    const c = next[b];
    const e1 = growing[a];
    const e2 = growing[b];
    const node = nodeCount++;
    if (eventR[b] < Infinity) {
      nodeX[node] = eventX[b];
      nodeY[node] = eventY[b];
      nodeR[node] = eventR[b];
    } else {
      // only where all that is left meets in one disc already found
      const at = nodeR[edgeFrom[e1]] > nodeR[edgeFrom[e2]] ? edgeFrom[e1] : edgeFrom[e2];
      nodeX[node] = nodeX[at];
      nodeY[node] = nodeY[at];
      nodeR[node] = nodeR[at];
    }
    edgeTo[e1] = node;
    edgeTo[e2] = node;
    const e3 = edgeCount++;
    edgeFrom[e3] = node;
    edgeLeft[e3] = site[a];
    edgeRight[e3] = site[c];
    nextHalf[2 * e1] = 2 * e2 + 1;
    nextHalf[2 * e2] = 2 * e3;
    beforeUp[e3] = 2 * e2;
    nextHalf[2 * e3 + 1] = 2 * e1 + 1;
    growing[a] = e3;
    next[a] = c;
    previous[c] = a;
  };

  /** Joins the two edges that grow towards each other between the last two instances; the later one in the list is given up. */
  const join = (a: number): void => {
    const b = next[a];
    const isUp = nodeR[edgeFrom[growing[a]]] <= nodeR[edgeFrom[growing[b]]];
    const keep = isUp ? growing[a] : growing[b];
    const drop = isUp ? growing[b] : growing[a];
    edgeTo[keep] = edgeFrom[drop];
    const after = nextHalf[2 * drop + 1];
    nextHalf[2 * keep] = after;
    if ((after & 1) === 0) {
      // the other edge of a neck, which may be given up too
      beforeUp[after >> 1] = 2 * keep;
    }
    nextHalf[beforeUp[drop]] = 2 * keep + 1;
    edgeFrom[drop] = -1;
  };

  const isDone = new Uint8Array(m);
  for (let start = 0; start < m; start++) {
    if (isDone[start] !== 0) {
      continue;
    }
    let size = 0;
    let i = start;
    do {
      isDone[i] = 1;
      size++;
      i = next[i];
    } while (i !== start);
    let last = start;
    if (size > 2) {
      do {
        meet(i);
        i = next[i];
      } while (i !== start);
    }
    while (size > 2) {
      const least = queue.pop();
      const b = size === 3 ? besideSpoke(least) : least;
      const a = previous[b];
      const c = next[b];
      close(b);
      last = a;
      size--;
      if (size > 2) {
        meet(a);
        meet(c);
      }
    }
    queue.clear();
    join(last);
  }
  return pack(
    { nodeX, nodeY, nodeR, edgeFrom, edgeTo, edgeLeft, edgeRight, nextHalf, neckCount: necks.count },
    nodeCount,
    edgeCount,
  );
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

/** Copies without the edges given up in joins. */
function pack(graph: AxisGraph, nodeCount: number, edgeCount: number): AxisGraph {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nextHalf } = graph;
  const renamed = new Int32Array(edgeCount);
  let kept = 0;
  for (let e = 0; e < edgeCount; e++) {
    renamed[e] = kept;
    if (edgeFrom[e] >= 0) {
      edgeFrom[kept] = edgeFrom[e];
      edgeTo[kept] = edgeTo[e];
      edgeLeft[kept] = edgeLeft[e];
      edgeRight[kept] = edgeRight[e];
      nextHalf[2 * kept] = nextHalf[2 * e];
      nextHalf[2 * kept + 1] = nextHalf[2 * e + 1];
      kept++;
    }
  }
  for (let h = 0; h < 2 * kept; h++) {
    nextHalf[h] = 2 * renamed[nextHalf[h] >> 1] + (nextHalf[h] & 1);
  }
  return {
    nodeX: graph.nodeX.slice(0, nodeCount),
    nodeY: graph.nodeY.slice(0, nodeCount),
    nodeR: graph.nodeR.slice(0, nodeCount),
    edgeFrom: edgeFrom.slice(0, kept),
    edgeTo: edgeTo.slice(0, kept),
    edgeLeft: edgeLeft.slice(0, kept),
    edgeRight: edgeRight.slice(0, kept),
    nextHalf: nextHalf.slice(0, 2 * kept),
    neckCount: graph.neckCount,
  };
}
