import type { Boundary } from './boundary.ts';
import {
  CELL_STRIDE,
  DUE,
  edgesSideBySide,
  GROWS_R,
  GROWS_X,
  GROWS_Y,
  IS_QUEUED,
  R,
  X,
  Y,
} from './cell-layout.ts';
import { CellsOnEdges } from './cells-on-edges.ts';
import { CellsOnPoints } from './cells-on-points.ts';
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
 * What is kept for each instance of a site besides its cell: its neighbours, the half-edge that leads away from where its bisector with the
 * next one starts, the site.
 */
const LINK_STRIDE = 4;
const NEXT = 0;
const PREVIOUS = 1;
const AWAY = 2;
const SITE = 3;

/**
 * Grows the axis of every piece from its leaves: neighbours along the piece's boundary meet in bisectors on which the clearance rises; the
 * site whose two bisectors meet at the least clearance has its cell closed there, and its neighbours become neighbours. No piece has a
 * least clearance inside, so nothing else can happen, and rounding can't make the graph inconsistent. O(n log n).
 */
export function collapsePieces(boundary: Boundary, necks: Necks, cut: CutBoundary): AxisGraph {
  const pieces = piecesOf(cut, necks.count);
  const collapse = new Collapse(boundary, necks, cut, pieces);
  for (let k = 0; k < pieces.starts.length; k++) {
    collapse.collapse(pieces.starts[k], pieces.sizes[k]);
  }
  return collapse.graph;
}

/** The pieces of more than two instances, and how many nodes and edges the axis of all pieces has. */
interface Pieces {
  readonly starts: readonly number[];
  readonly sizes: readonly number[];
  readonly nodeCount: number;
  readonly edgeCount: number;
}

function piecesOf({ count, next, neckAfter }: CutBoundary, neckCount: number): Pieces {
  const starts: number[] = [];
  const sizes: number[] = [];
  const isSeen = new Uint8Array(count);
  let nodeCount = neckCount;
  let edgeCount = 0;
  for (let start = 0; start < count; start++) {
    nodeCount += neckAfter[start] < 0 ? 1 : 0;
    if (isSeen[start] === 0) {
      let size = 0;
      let i = start;
      do {
        isSeen[i] = 1;
        size++;
        i = next[i];
      } while (i !== start);
      // each cell that closes makes a node, and all but the last an edge besides those from the leaves
      nodeCount += size - 2;
      edgeCount += size === 2 ? 1 : 2 * size - 3;
      if (size > 2) {
        starts.push(start);
        sizes.push(size);
      }
    }
  }
  return { starts, sizes, nodeCount, edgeCount };
}

class Collapse {
  readonly graph: AxisGraph;
  readonly #boundary: Boundary;
  readonly #cells: Float64Array;
  readonly #links: Int32Array;
  readonly #onEdges: CellsOnEdges;
  readonly #onPoints: CellsOnPoints;
  readonly #queue = new EventQueue();
  #nodeCount: number;
  #edgeCount = 0;

  constructor(boundary: Boundary, necks: Necks, cut: CutBoundary, { nodeCount, edgeCount }: Pieces) {
    const edges = edgesSideBySide(boundary);
    this.#boundary = boundary;
    this.#cells = new Float64Array(CELL_STRIDE * cut.count);
    this.#links = new Int32Array(LINK_STRIDE * cut.count);
    this.#onEdges = new CellsOnEdges(edges, this.#cells);
    this.#onPoints = new CellsOnPoints(edges, boundary.previous, this.#cells);
    this.graph = {
      nodeX: new Float64Array(nodeCount),
      nodeY: new Float64Array(nodeCount),
      nodeR: new Float64Array(nodeCount),
      edgeFrom: new Int32Array(edgeCount),
      edgeTo: new Int32Array(edgeCount),
      edgeLeft: new Int32Array(edgeCount),
      edgeRight: new Int32Array(edgeCount),
      nextHalf: new Int32Array(2 * edgeCount),
      neckCount: necks.count,
    };
    this.#nodeCount = necks.count;
    this.#putNecks(necks);
    this.#putLeaves(cut);
  }

  #putNecks({ count, vertex, endX, endY }: Necks): void {
    const { x, y } = this.#boundary;
    const { nodeX, nodeY, nodeR } = this.graph;
    for (let k = 0; k < count; k++) {
      const v = vertex[k];
      const dx = endX[k] - x[v];
      const dy = endY[k] - y[v];
      nodeX[k] = (x[v] + endX[k]) / 2;
      nodeY[k] = (y[v] + endY[k]) / 2;
      nodeR[k] = Math.sqrt(dx * dx + dy * dy) / 2;
    }
  }

  /** Links the instances of each piece; between neighbours an edge grows from their common point of the boundary or from their neck. */
  #putLeaves({ count: m, site, next, neckAfter }: CutBoundary): void {
    const { count: n, x, y, next: nextPoint } = this.#boundary;
    const { nodeX, nodeY, nodeR, edgeFrom, edgeTo, edgeLeft, edgeRight, nextHalf, neckCount } = this.graph;
    const cells = this.#cells;
    const links = this.#links;
    const otherSide = new Int32Array(neckCount).fill(-1);
    const startR = (i: number): number => (neckAfter[i] < 0 ? 0 : nodeR[neckAfter[i]]);
    let nodeCount = this.#nodeCount;
    let edgeCount = 0;
    for (let i = 0; i < m; i++) {
      const after = next[i];
      const s = site[i];
      const neck = neckAfter[i];
      let from = neck;
      if (neck < 0) {
        from = nodeCount++;
        const p = s < n ? nextPoint[s] : s - n;
        nodeX[from] = x[p];
        nodeY[from] = y[p];
      }
      const cell = CELL_STRIDE * i;
      cells[cell + GROWS_X] = nodeX[from];
      cells[cell + GROWS_Y] = nodeY[from];
      cells[cell + GROWS_R] = nodeR[from];
      // two instances alone share one edge, up which one of them goes and down which the other
      const isAlone = next[after] === i;
      let away = 2 * edgeCount;
      if (isAlone && after < i) {
        away = links[LINK_STRIDE * after + AWAY] ^ 1;
      } else {
        edgeCount++;
        away += isAlone && startR(i) > startR(after) ? 1 : 0;
      }
      if ((away & 1) === 0) {
        edgeFrom[away >> 1] = from;
        edgeLeft[away >> 1] = s;
        edgeRight[away >> 1] = site[after];
      } else {
        edgeTo[away >> 1] = from;
      }
      const link = LINK_STRIDE * i;
      links[link + NEXT] = after;
      links[LINK_STRIDE * after + PREVIOUS] = i;
      links[link + AWAY] = away;
      links[link + SITE] = s;
      if (neck < 0) {
        nextHalf[away ^ 1] = away;
      } else if (otherSide[neck] < 0) {
        otherSide[neck] = away;
      } else {
        nextHalf[away ^ 1] = otherSide[neck];
        nextHalf[otherSide[neck] ^ 1] = away;
      }
    }
    this.#nodeCount = nodeCount;
    this.#edgeCount = edgeCount;
  }

  /** Closes the cells of one piece, which has more than two instances, among them `start`. */
  collapse(start: number, size: number): void {
    const links = this.#links;
    let i = start;
    do {
      this.#meet(i);
      i = links[LINK_STRIDE * i + NEXT];
    } while (i !== start);
    do {
      this.#offer(i);
      i = links[LINK_STRIDE * i + NEXT];
    } while (i !== start);
    for (let left = size; left > 3; left--) {
      this.#closeFirst();
    }
    this.#closeLast(this.#besideSpoke(this.#first()));
    this.#queue.clear();
  }

  /** Closes the cell that closes first of all and lets its neighbours meet. */
  #closeFirst(): void {
    const links = this.#links;
    const b = this.#first();
    const a = links[LINK_STRIDE * b + PREVIOUS];
    const c = links[LINK_STRIDE * b + NEXT];
    this.#close(a, b, c);
    // a new neighbour makes a cell close no later, but for rounding: then the cell beyond may have become first
    if (this.#meet(a)) {
      this.#offer(links[LINK_STRIDE * a + PREVIOUS]);
    }
    if (this.#meet(c)) {
      this.#offer(links[LINK_STRIDE * c + NEXT]);
    }
    this.#offer(a);
    this.#offer(c);
  }

  /** Sets where the cell of instance i closes. Whether it does so later than before. */
  #meet(i: number): boolean {
    const cells = this.#cells;
    const links = this.#links;
    const link = LINK_STRIDE * i;
    const left = links[link + PREVIOUS];
    const s = links[link + SITE];
    const leftSite = links[LINK_STRIDE * left + SITE];
    const rightSite = links[LINK_STRIDE * links[link + NEXT] + SITE];
    const at = CELL_STRIDE * i;
    const leftAt = CELL_STRIDE * left;
    const n = this.#boundary.count;
    if (s < n) {
      this.#onEdges.meet(at, s, leftSite, rightSite, leftAt);
    } else {
      this.#onPoints.meet(at, s - n, leftSite, rightSite, leftAt);
    }
    const later = cells[leftAt + GROWS_R] > cells[at + GROWS_R] ? leftAt : at;
    const reached = cells[later + GROWS_R];
    if (!(cells[at + R] >= reached * (1 - LEVEL_SHARE))) {
      // several sites meet in one disc already found: the cell closes there
      cells[at + X] = cells[later + GROWS_X];
      cells[at + Y] = cells[later + GROWS_Y];
      cells[at + R] = reached;
    }
    const due = Math.max(cells[at + R], reached);
    const isLater = due > cells[at + DUE];
    cells[at + DUE] = due;
    cells[at + IS_QUEUED] = 0;
    return isLater;
  }

  /** Queues instance i if it closes before both its neighbours: others can't be first of all, and so the queue stays short. */
  #offer(i: number): void {
    const cells = this.#cells;
    const links = this.#links;
    const at = CELL_STRIDE * i;
    const due = cells[at + DUE];
    const before = links[LINK_STRIDE * i + PREVIOUS];
    const after = links[LINK_STRIDE * i + NEXT];
    const dueBefore = cells[CELL_STRIDE * before + DUE];
    const dueAfter = cells[CELL_STRIDE * after + DUE];
    // ties go by place
    if (
      (due < dueBefore || (due === dueBefore && i < before)) &&
      (due < dueAfter || (due === dueAfter && i < after)) &&
      cells[at + IS_QUEUED] === 0
    ) {
      cells[at + IS_QUEUED] = 1;
      this.#queue.push(i, due);
    }
  }

  /** The instance that closes first of all. */
  #first(): number {
    const cells = this.#cells;
    const queue = this.#queue;
    let i = queue.pop();
    while (cells[CELL_STRIDE * i + DUE] !== queue.poppedKey) {
      i = queue.pop();
    }
    return i;
  }

  /** Of the last three instances, which all close in one node, one beside a spoke if there is: only that puts the node on the spoke exactly. */
  #besideSpoke(i: number): number {
    const links = this.#links;
    const siteOf = (k: number): number => links[LINK_STRIDE * k + SITE];
    for (const b of [i, links[LINK_STRIDE * i + NEXT], links[LINK_STRIDE * i + PREVIOUS]]) {
      const a = siteOf(links[LINK_STRIDE * b + PREVIOUS]);
      const c = siteOf(links[LINK_STRIDE * b + NEXT]);
      const s = siteOf(b);
      if (this.#cells[CELL_STRIDE * b + R] < Infinity && (this.#isSpoke(a, s) || this.#isSpoke(s, c))) {
        return b;
      }
    }
    return i;
  }

  #isSpoke(a: number, b: number): boolean {
    const { count: n, next } = this.#boundary;
    return a < n ? b === n + next[a] || b === n + a : b < n && (a === n + b || a === n + next[b]);
  }

  /** Closes the cell of instance b between a and c, which are neighbours from there on. */
  #close(a: number, b: number, c: number): void {
    const { nodeX, nodeY, nodeR, edgeFrom, edgeLeft, edgeRight, nextHalf } = this.graph;
    const cells = this.#cells;
    const links = this.#links;
    const e = this.#edgeCount++;
    const down = links[LINK_STRIDE * a + AWAY] ^ 1;
    const node = this.#end(a, b);
    edgeFrom[e] = node;
    edgeLeft[e] = links[LINK_STRIDE * a + SITE];
    edgeRight[e] = links[LINK_STRIDE * c + SITE];
    nextHalf[links[LINK_STRIDE * b + AWAY]] = 2 * e;
    nextHalf[2 * e + 1] = down;
    links[LINK_STRIDE * a + AWAY] = 2 * e;
    links[LINK_STRIDE * a + NEXT] = c;
    links[LINK_STRIDE * c + PREVIOUS] = a;
    const at = CELL_STRIDE * a;
    cells[at + GROWS_X] = nodeX[node];
    cells[at + GROWS_Y] = nodeY[node];
    cells[at + GROWS_R] = nodeR[node];
  }

  /** Ends the edges between the last three instances in one node, where the cell of b closes. */
  #closeLast(b: number): void {
    const { edgeTo, nextHalf } = this.graph;
    const cells = this.#cells;
    const links = this.#links;
    const a = links[LINK_STRIDE * b + PREVIOUS];
    const c = links[LINK_STRIDE * b + NEXT];
    const at = CELL_STRIDE * b;
    for (const i of [a, b, c]) {
      const grows = CELL_STRIDE * i;
      if (!(cells[at + R] < Infinity && cells[at + R] >= cells[grows + GROWS_R] * (1 - LEVEL_SHARE))) {
        // all meet in one disc already found
        cells[at + X] = cells[grows + GROWS_X];
        cells[at + Y] = cells[grows + GROWS_Y];
        cells[at + R] = cells[grows + GROWS_R];
      }
    }
    const node = this.#end(a, b);
    const away = links[LINK_STRIDE * c + AWAY];
    edgeTo[away >> 1] = node;
    nextHalf[links[LINK_STRIDE * b + AWAY]] = away ^ 1;
    nextHalf[away] = links[LINK_STRIDE * a + AWAY] ^ 1;
  }

  /** Ends the edges between instance a and b and after b in a node where the cell of b closes; the node. */
  #end(a: number, b: number): number {
    const { nodeX, nodeY, nodeR, edgeTo, nextHalf } = this.graph;
    const cells = this.#cells;
    const links = this.#links;
    const node = this.#nodeCount++;
    const at = CELL_STRIDE * b;
    nodeX[node] = cells[at + X];
    nodeY[node] = cells[at + Y];
    nodeR[node] = cells[at + R];
    // no entry of the queue is that of a cell that has closed
    cells[at + DUE] = Number.NaN;
    const before = links[LINK_STRIDE * a + AWAY];
    const after = links[LINK_STRIDE * b + AWAY];
    edgeTo[before >> 1] = node;
    edgeTo[after >> 1] = node;
    nextHalf[before] = after ^ 1;
    return node;
  }
}
