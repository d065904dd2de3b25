import type { Boundary } from './boundary.ts';
import { cellEvents } from './cell-events.ts';
import type { CutBoundary } from './cut-at-necks.ts';
import { EventQueue } from './event-queue.ts';
import type { Necks } from './find-necks.ts';
import { LEVEL_SHARE } from './tolerances.ts';

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
  const { count: n, x, y, next: nextPoint } = boundary;
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
  const { meetOnEdge, meetOnVertex } = cellEvents(
    boundary,
    { x: nodeX, y: nodeY, r: nodeR },
    { x: eventX, y: eventY, r: eventR },
  );

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
