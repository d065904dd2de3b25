import type { Boundary } from './boundary.ts';
import { cellEvents, DISC_STRIDE } from './cell-events.ts';
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

/** Place in an event of the clearance at which it is due; not a number once the cell has closed. */
const DUE = 3;

/** What is kept for each instance of a site, side by side: its neighbours, the edge that grows between it and the next, the site. */
const LINK_STRIDE = 4;
const NEXT = 0;
const PREVIOUS = 1;
const GROWING = 2;
const SITE = 3;

/**
 * What is kept for each edge, side by side; edges are named by where that begins. The two half-edges are named by the places that hold
 * their successors, and `BEFORE_UP` holds the half-edge whose successor is the way up.
 */
const EDGE_STRIDE = 8;
const FROM = 0;
const TO = 1;
const LEFT = 2;
const RIGHT = 3;
const NEXT_UP = 4;
const NEXT_DOWN = 5;
const BEFORE_UP = 6;

/**
 * Grows the axis of every piece from its leaves: neighbours along the piece's boundary meet in bisectors on which the clearance rises; the
 * site whose two bisectors meet at the least clearance has its cell closed there, and its neighbours become neighbours. No piece has a
 * least clearance inside, so nothing else can happen, and rounding can't make the graph inconsistent. O(n log n).
 */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: an algorithm kernel: its steps share a score of arrays
export function collapsePieces(boundary: Boundary, necks: Necks, cut: CutBoundary): AxisGraph {
  const { count: n, x, y, next: nextPoint } = boundary;
  const { count: m, site: siteOf, next: cutNext, neckAfter } = cut;
  const nodes = new Float64Array(DISC_STRIDE * 2 * m);
  const events = new Float64Array(DISC_STRIDE * m);
  const edges = new Int32Array(EDGE_STRIDE * 2 * m);
  const links = new Int32Array(LINK_STRIDE * m);
  /** 1 where an instance waits in the queue by its present event. */
  const isQueued = new Uint8Array(m);
  let nodeCount = necks.count;
  let edgeCount = 0;
  const queue = new EventQueue();
  const { meetOnEdge, meetOnVertex } = cellEvents(boundary, nodes, events);

  for (let k = 0; k < necks.count; k++) {
    const v = necks.vertex[k];
    const dx = necks.endX[k] - x[v];
    const dy = necks.endY[k] - y[v];
    nodes[DISC_STRIDE * k] = (x[v] + necks.endX[k]) / 2;
    nodes[DISC_STRIDE * k + 1] = (y[v] + necks.endY[k]) / 2;
    nodes[DISC_STRIDE * k + 2] = Math.sqrt(dx * dx + dy * dy) / 2;
  }
  const otherSide = new Int32Array(necks.count).fill(-1);
  for (let i = 0; i < m; i++) {
    const after = cutNext[i];
    const s = siteOf[i];
    const e = EDGE_STRIDE * edgeCount++;
    links[LINK_STRIDE * i + NEXT] = after;
    links[LINK_STRIDE * after + PREVIOUS] = i;
    links[LINK_STRIDE * i + GROWING] = e;
    links[LINK_STRIDE * i + SITE] = s;
    edges[e + LEFT] = s;
    edges[e + RIGHT] = siteOf[after];
    const neck = neckAfter[i];
    if (neck < 0) {
      const node = nodeCount++;
      const p = s < n ? nextPoint[s] : s - n;
      nodes[DISC_STRIDE * node] = x[p];
      nodes[DISC_STRIDE * node + 1] = y[p];
      edges[e + FROM] = node;
      edges[e + NEXT_DOWN] = e + NEXT_UP;
      edges[e + BEFORE_UP] = e + NEXT_DOWN;
    } else {
      edges[e + FROM] = neck;
      const f = otherSide[neck];
      if (f < 0) {
        otherSide[neck] = e;
      } else {
        edges[e + NEXT_DOWN] = f + NEXT_UP;
        edges[f + NEXT_DOWN] = e + NEXT_UP;
        edges[f + BEFORE_UP] = e + NEXT_DOWN;
        edges[e + BEFORE_UP] = f + NEXT_DOWN;
      }
    }
  }

  /** Sets the event of instance i: where its own cell closes. */
  const meet = (i: number): void => {
    const left = links[LINK_STRIDE * i + PREVIOUS];
    const right = links[LINK_STRIDE * i + NEXT];
    const from = edges[links[LINK_STRIDE * left + GROWING] + FROM];
    const to = edges[links[LINK_STRIDE * i + GROWING] + FROM];
    const s = links[LINK_STRIDE * i + SITE];
    const leftSite = links[LINK_STRIDE * left + SITE];
    const rightSite = links[LINK_STRIDE * right + SITE];
    if (s < n) {
      meetOnEdge(i, s, leftSite, rightSite, from, to);
    } else {
      meetOnVertex(i, s - n, leftSite, rightSite, from, to);
    }
    const later = DISC_STRIDE * (nodes[DISC_STRIDE * from + 2] > nodes[DISC_STRIDE * to + 2] ? from : to);
    const event = DISC_STRIDE * i;
    const reached = nodes[later + 2];
    if (!(events[event + 2] >= reached * (1 - LEVEL_SHARE))) {
      // several sites meet in one disc already found: the cell closes there
      events[event] = nodes[later];
      events[event + 1] = nodes[later + 1];
      events[event + 2] = reached;
    }
    events[event + DUE] = Math.max(events[event + 2], reached);
    isQueued[i] = 0;
  };

  const isBefore = (i: number, j: number): boolean => {
    const a = events[DISC_STRIDE * i + DUE];
    const b = events[DISC_STRIDE * j + DUE];
    return a < b || (a === b && i < j);
  };

  /** Queues instance i if it closes before both its neighbours: others can't be first of all, and so the queue stays short. */
  const offer = (i: number): void => {
    if (
      isQueued[i] === 0 &&
      isBefore(i, links[LINK_STRIDE * i + PREVIOUS]) &&
      isBefore(i, links[LINK_STRIDE * i + NEXT])
    ) {
      isQueued[i] = 1;
      queue.push(i, events[DISC_STRIDE * i + DUE]);
    }
  };

  /** The instance that closes first of all. */
  const first = (): number => {
    let i = queue.pop();
    while (events[DISC_STRIDE * i + DUE] !== queue.poppedKey) {
      i = queue.pop();
    }
    return i;
  };

  const isSpoke = (a: number, b: number): boolean =>
    a < n ? b === n + nextPoint[a] || b === n + a : b < n && (a === n + b || a === n + nextPoint[b]);

  /** Of the last three instances, which all close in one node, one beside a spoke if there is: only that puts the node on the spoke exactly. */
  const besideSpoke = (i: number): number => {
    const before = links[LINK_STRIDE * i + PREVIOUS];
    const after = links[LINK_STRIDE * i + NEXT];
    for (const b of [i, after, before]) {
      const a = siteOf[links[LINK_STRIDE * b + PREVIOUS]];
      const c = siteOf[links[LINK_STRIDE * b + NEXT]];
      const s = siteOf[b];
      if (events[DISC_STRIDE * b + 2] < Infinity && (isSpoke(a, s) || isSpoke(s, c))) {
        return b;
      }
    }
    return i;
  };

  /** Closes the cell of instance b at its event and lets its neighbours meet. */
  const close = (b: number): void => {
    const a = links[LINK_STRIDE * b + PREVIOUS];
    const c = links[LINK_STRIDE * b + NEXT];
    const e1 = links[LINK_STRIDE * a + GROWING];
    const e2 = links[LINK_STRIDE * b + GROWING];
    const node = nodeCount++;
    const to = DISC_STRIDE * node;
    const event = DISC_STRIDE * b;
    if (events[event + 2] < Infinity) {
      nodes[to] = events[event];
      nodes[to + 1] = events[event + 1];
      nodes[to + 2] = events[event + 2];
    } else {
      // only where all that is left meets in one disc already found
      const from1 = DISC_STRIDE * edges[e1 + FROM];
      const from2 = DISC_STRIDE * edges[e2 + FROM];
      const at = nodes[from1 + 2] > nodes[from2 + 2] ? from1 : from2;
      nodes[to] = nodes[at];
      nodes[to + 1] = nodes[at + 1];
      nodes[to + 2] = nodes[at + 2];
    }
    events[event + DUE] = Number.NaN;
    edges[e1 + TO] = node;
    edges[e2 + TO] = node;
    const e3 = EDGE_STRIDE * edgeCount++;
    edges[e3 + FROM] = node;
    edges[e3 + LEFT] = links[LINK_STRIDE * a + SITE];
    edges[e3 + RIGHT] = links[LINK_STRIDE * c + SITE];
    edges[e1 + NEXT_UP] = e2 + NEXT_DOWN;
    edges[e2 + NEXT_UP] = e3 + NEXT_UP;
    edges[e3 + BEFORE_UP] = e2 + NEXT_UP;
    edges[e3 + NEXT_DOWN] = e1 + NEXT_DOWN;
    links[LINK_STRIDE * a + GROWING] = e3;
    links[LINK_STRIDE * a + NEXT] = c;
    links[LINK_STRIDE * c + PREVIOUS] = a;
  };

  /** Joins the two edges that grow towards each other between the last two instances; the later one in the list is given up. */
  const join = (a: number): void => {
    const b = links[LINK_STRIDE * a + NEXT];
    const ea = links[LINK_STRIDE * a + GROWING];
    const eb = links[LINK_STRIDE * b + GROWING];
    const isUp = nodes[DISC_STRIDE * edges[ea + FROM] + 2] <= nodes[DISC_STRIDE * edges[eb + FROM] + 2];
    const keep = isUp ? ea : eb;
    const drop = isUp ? eb : ea;
    edges[keep + TO] = edges[drop + FROM];
    const after = edges[drop + NEXT_DOWN];
    edges[keep + NEXT_UP] = after;
    if (after % EDGE_STRIDE === NEXT_UP) {
      // the other edge of a neck, which may be given up too
      edges[after - NEXT_UP + BEFORE_UP] = keep + NEXT_UP;
    }
    edges[edges[drop + BEFORE_UP]] = keep + NEXT_DOWN;
    edges[drop + FROM] = -1;
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
      i = links[LINK_STRIDE * i + NEXT];
    } while (i !== start);
    let last = start;
    if (size > 2) {
      do {
        meet(i);
        i = links[LINK_STRIDE * i + NEXT];
      } while (i !== start);
      do {
        offer(i);
        i = links[LINK_STRIDE * i + NEXT];
      } while (i !== start);
    }
    while (size > 2) {
      const least = first();
      const b = size === 3 ? besideSpoke(least) : least;
      const a = links[LINK_STRIDE * b + PREVIOUS];
      const c = links[LINK_STRIDE * b + NEXT];
      close(b);
      last = a;
      size--;
      if (size > 2) {
        meet(a);
        meet(c);
        offer(links[LINK_STRIDE * a + PREVIOUS]);
        offer(a);
        offer(c);
        offer(links[LINK_STRIDE * c + NEXT]);
      }
    }
    queue.clear();
    join(last);
  }
  return unpack(nodes, nodeCount, edges, edgeCount, necks.count);
}

/** The graph with one array for each thing, without the edges given up in joins. */
function unpack(
  nodes: Float64Array,
  nodeCount: number,
  edges: Int32Array,
  edgeCount: number,
  neckCount: number,
): AxisGraph {
  let kept = 0;
  for (let e = 0; e < edgeCount; e++) {
    // what led to the edge is of no more use: its place holds its new name
    edges[EDGE_STRIDE * e + BEFORE_UP] = kept;
    kept += edges[EDGE_STRIDE * e + FROM] >= 0 ? 1 : 0;
  }
  const edgeFrom = new Int32Array(kept);
  const edgeTo = new Int32Array(kept);
  const edgeLeft = new Int32Array(kept);
  const edgeRight = new Int32Array(kept);
  const nextHalf = new Int32Array(2 * kept);
  const half = (link: number): number => {
    const side = link % EDGE_STRIDE;
    return 2 * edges[link - side + BEFORE_UP] + (side === NEXT_UP ? 0 : 1);
  };
  let k = 0;
  for (let e = 0; e < EDGE_STRIDE * edgeCount; e += EDGE_STRIDE) {
    if (edges[e + FROM] >= 0) {
      edgeFrom[k] = edges[e + FROM];
      edgeTo[k] = edges[e + TO];
      edgeLeft[k] = edges[e + LEFT];
      edgeRight[k] = edges[e + RIGHT];
      nextHalf[2 * k] = half(edges[e + NEXT_UP]);
      nextHalf[2 * k + 1] = half(edges[e + NEXT_DOWN]);
      k++;
    }
  }
  const nodeX = new Float64Array(nodeCount);
  const nodeY = new Float64Array(nodeCount);
  const nodeR = new Float64Array(nodeCount);
  for (let i = 0; i < nodeCount; i++) {
    nodeX[i] = nodes[DISC_STRIDE * i];
    nodeY[i] = nodes[DISC_STRIDE * i + 1];
    nodeR[i] = nodes[DISC_STRIDE * i + 2];
  }
  return { nodeX, nodeY, nodeR, edgeFrom, edgeTo, edgeLeft, edgeRight, nextHalf, neckCount };
}
