import { poll, pollStep } from '@pourproof/plane';
import FlatQueue from 'flatqueue';
import type { Boundary } from './boundary.ts';
import {
  AWAY,
  CELL_STRIDE,
  cellsFor,
  DUE,
  GROWS_R,
  GROWS_X,
  GROWS_Y,
  IS_QUEUED,
  MATE,
  NEXT,
  PREVIOUS,
  R,
  SITE,
  SITE_TX,
  SITE_TY,
  SITE_X,
  SITE_Y,
  X,
  Y,
} from './cell-layout.ts';
import { ClosingOrder } from './closing-order.ts';
import type { CutBoundary } from './cut-at-bottlenecks.ts';
import type { Bottlenecks } from './find-bottlenecks.ts';
import { type AxisGraph, GrowingGraph } from './growing-graph.ts';
import { type Pieces, piecesOf } from './pieces.ts';
import { SegmentCells } from './segment-cells.ts';
import { CLOSING_TIE_REL_TOL, LEVEL_REL_TOL } from './tolerances.ts';
import { VertexCells } from './vertex-cells.ts';

/**
 * Grows the axis of every piece from its leaves. Neighbours along the boundary of a piece meet in bisectors
 * along which the clearance rises; the site whose two bisectors meet at the smallest clearance has its cell
 * closed there, and its neighbours become neighbours. No piece has a minimum of clearance inside, so there
 * are no other events, and rounding cannot make the graph inconsistent. O(n log n).
 */
export function collapsePieces(boundary: Boundary, bottlenecks: Bottlenecks, cut: CutBoundary): AxisGraph {
  const pieces = piecesOf(cut, bottlenecks.count);
  const collapse = new Collapse(boundary, bottlenecks, cut, pieces);
  for (let k = 0; k < pieces.starts.length; k++) {
    poll();
    collapse.collapse(CELL_STRIDE * pieces.starts[k], pieces.sizes[k]);
  }
  return collapse.graph;
}

class Collapse {
  readonly graph: GrowingGraph;
  readonly #boundary: Boundary;
  readonly #numbers: Float64Array;
  readonly #links: Int32Array;
  readonly #segmentCells: SegmentCells;
  readonly #vertexCells: VertexCells;
  readonly #order: ClosingOrder;
  /**
   * Cells by the clearance at which they were to close when they were queued; entries that no longer hold are
   * passed over.
   */
  readonly #queue: FlatQueue = new FlatQueue();

  constructor(
    boundary: Boundary,
    bottlenecks: Bottlenecks,
    cut: CutBoundary,
    { nodeCount, edgeCount }: Pieces,
  ) {
    this.#boundary = boundary;
    const cells = cellsFor(cut.count);
    this.#numbers = cells.numbers;
    this.#links = cells.links;
    this.#segmentCells = new SegmentCells(cells, boundary.count);
    this.#vertexCells = new VertexCells(cells, boundary.count);
    this.#order = new ClosingOrder(cells, boundary.count, boundary.extent);
    this.graph = new GrowingGraph(nodeCount, edgeCount, bottlenecks.count);
    this.#putBottlenecks(bottlenecks);
    this.#putInstances(cut, bottlenecks.count);
  }

  #putBottlenecks({ count, vertex, endX, endY }: Bottlenecks): void {
    const { x, y } = this.#boundary;
    for (let k = 0; k < count; k++) {
      pollStep();
      const v = vertex[k];
      const dx = endX[k] - x[v];
      const dy = endY[k] - y[v];
      this.graph.addNode((x[v] + endX[k]) / 2, (y[v] + endY[k]) / 2, Math.sqrt(dx * dx + dy * dy) / 2);
    }
  }

  /**
   * Writes the site and the neighbours of each instance; after it an edge grows from a boundary point or from
   * a bottleneck.
   */
  #putInstances(cut: CutBoundary, bottleneckCount: number): void {
    const { count, site, next, bottleneckAfter } = cut;
    const { count: n, x, y, tx, ty, next: nextPoint, previous } = this.#boundary;
    const numbers = this.#numbers;
    const links = this.#links;
    const graph = this.graph;
    const otherSide = new Int32Array(bottleneckCount).fill(-1);
    for (let i = 0; i < count; i++) {
      pollStep();
      const at = CELL_STRIDE * i;
      const after = CELL_STRIDE * next[i];
      const s = site[i];
      const p = s < n ? s : s - n;
      const end = s < n ? nextPoint[s] : p;
      numbers[at + SITE_X] = x[p];
      numbers[at + SITE_Y] = y[p];
      numbers[at + SITE_TX] = tx[p];
      numbers[at + SITE_TY] = ty[p];
      links[2 * at + SITE] = s;
      links[2 * at + MATE] = s < n ? n + end : previous[p];
      links[2 * at + NEXT] = after;
      links[2 * after + PREVIOUS] = at;
      const bottleneck = bottleneckAfter[i];
      const from = bottleneck < 0 ? graph.addNode(x[end], y[end], 0) : bottleneck;
      numbers[at + GROWS_X] = graph.nodeX[from];
      numbers[at + GROWS_Y] = graph.nodeY[from];
      numbers[at + GROWS_R] = graph.nodeR[from];
      const isAlone = next[next[i]] === i;
      const away = isAlone ? this.#shareEdge(i, from, cut) : graph.addEdge(from, s, site[next[i]]);
      links[2 * at + AWAY] = away;
      if (bottleneck < 0) {
        graph.nextHalf[away ^ 1] = away;
      } else if (otherSide[bottleneck] < 0) {
        otherSide[bottleneck] = away;
      } else {
        graph.nextHalf[away ^ 1] = otherSide[bottleneck];
        graph.nextHalf[otherSide[bottleneck] ^ 1] = away;
      }
    }
  }

  /**
   * The half-edge away from node `from` along the only edge of a piece of two instances, i and its neighbour.
   */
  #shareEdge(i: number, from: number, { site, next, bottleneckAfter }: CutBoundary): number {
    const graph = this.graph;
    const other = next[i];
    let away = this.#links[2 * CELL_STRIDE * other + AWAY] ^ 1;
    if (i < other) {
      const otherR = bottleneckAfter[other] < 0 ? 0 : graph.nodeR[bottleneckAfter[other]];
      away =
        graph.nodeR[from] <= otherR
          ? graph.addEdge(from, site[i], site[other])
          : graph.addEdge(from, site[other], site[i]) ^ 1;
    }
    graph.leadTo(away ^ 1, from);
    return away;
  }

  /** Closes the cells of the piece of instance `start`, which has more than two. */
  collapse(start: number, size: number): void {
    const links = this.#links;
    let at = start;
    do {
      const next = links[2 * at + NEXT];
      this.#meet(at, links[2 * at + PREVIOUS], next);
      at = next;
    } while (at !== start);
    do {
      this.#offer(at);
      at = links[2 * at + NEXT];
    } while (at !== start);
    for (let left = size; left > 3; left--) {
      at = this.#closeFirst(at);
    }
    this.#closeLast(this.#besideSecondary(this.#first(at)));
    this.#queue.clear();
  }

  /**
   * Closes the first cell to close in the piece of some instance and lets its neighbours meet; returns one of
   * them.
   */
  #closeFirst(some: number): number {
    const links = this.#links;
    const b = this.#first(some);
    const a = links[2 * b + PREVIOUS];
    const c = links[2 * b + NEXT];
    const before = links[2 * a + PREVIOUS];
    const after = links[2 * c + NEXT];
    this.#close(a, b, c);
    // except for rounding a new neighbour makes a cell close no later; if it does, the cell beyond may have
    // become first
    if (this.#meet(a, before, c)) {
      this.#offer(before);
    }
    if (this.#meet(c, a, after)) {
      this.#offer(after);
    }
    if (!this.#isFirst(a, c)) {
      if (this.#isFirst(c, after)) {
        this.#queueUp(c);
      }
    } else if (!this.#isFirst(before, a)) {
      this.#queueUp(a);
    }
    return a;
  }

  /** Whether the cell of instance a closes before that of the next instance c. */
  #isFirst(a: number, c: number): boolean {
    const due = this.#numbers[a + DUE];
    const otherDue = this.#numbers[c + DUE];
    if (due < otherDue * (1 - CLOSING_TIE_REL_TOL)) {
      return true;
    }
    if (otherDue < due * (1 - CLOSING_TIE_REL_TOL)) {
      return false;
    }
    // cells that do not close yet are ordered by place
    return due === Infinity ? a < c : this.#order.isFirst(a, c);
  }

  #queueUp(at: number): void {
    const links = this.#links;
    if (links[2 * at + IS_QUEUED] === 0) {
      links[2 * at + IS_QUEUED] = 1;
      this.#queue.push(at, this.#numbers[at + DUE]);
    }
  }

  /** Computes where the cell of an instance closes; whether that is later than before. */
  #meet(at: number, left: number, right: number): boolean {
    const numbers = this.#numbers;
    const links = this.#links;
    if (links[2 * at + SITE] < this.#boundary.count) {
      this.#segmentCells.meet(at, left, right);
    } else {
      this.#vertexCells.meet(at, left, right);
    }
    const later = numbers[left + GROWS_R] > numbers[at + GROWS_R] ? left : at;
    const reached = numbers[later + GROWS_R];
    if (!(numbers[at + R] >= reached * (1 - LEVEL_REL_TOL))) {
      // several sites touch one disc that is known already: the cell closes there
      this.#closeWhere(at, later);
    }
    const due = Math.max(numbers[at + R], reached);
    const isLater = due > numbers[at + DUE];
    numbers[at + DUE] = due;
    links[2 * at + IS_QUEUED] = 0;
    return isLater;
  }

  /** Makes a cell close in the disc from which a bisector grows. */
  #closeWhere(at: number, grows: number): void {
    const numbers = this.#numbers;
    numbers[at + X] = numbers[grows + GROWS_X];
    numbers[at + Y] = numbers[grows + GROWS_Y];
    numbers[at + R] = numbers[grows + GROWS_R];
  }

  /**
   * Queues an instance if it closes before both its neighbours: no other can be first, and the queue stays
   * short.
   */
  #offer(at: number): void {
    const links = this.#links;
    if (this.#isFirst(at, links[2 * at + NEXT]) && !this.#isFirst(links[2 * at + PREVIOUS], at)) {
      this.#queueUp(at);
    }
  }

  /** The first instance to close in the piece of some instance. */
  #first(some: number): number {
    const numbers = this.#numbers;
    const queue = this.#queue;
    let due = queue.peekValue();
    let at = queue.pop();
    while (at !== undefined && numbers[at + DUE] !== due) {
      due = queue.peekValue();
      at = queue.pop();
    }
    return at ?? this.#leastDue(some);
  }

  /**
   * The same by a linear search: where places decide instead of clearances, neighbours may all wait for one
   * another.
   */
  #leastDue(some: number): number {
    const numbers = this.#numbers;
    const links = this.#links;
    let least = some;
    for (let at = links[2 * some + NEXT]; at !== some; at = links[2 * at + NEXT]) {
      pollStep();
      if (numbers[at + DUE] < numbers[least + DUE]) {
        least = at;
      }
    }
    return least;
  }

  /**
   * Of the last three instances, which close in one node, one beside a secondary edge if there is one: only
   * that puts the node exactly on it.
   */
  #besideSecondary(at: number): number {
    const links = this.#links;
    for (const b of [at, links[2 * at + NEXT], links[2 * at + PREVIOUS]]) {
      const isBeside =
        this.#isSecondary(links[2 * b + PREVIOUS], b) || this.#isSecondary(b, links[2 * b + NEXT]);
      if (isBeside && this.#numbers[b + R] < Infinity) {
        return b;
      }
    }
    return at;
  }

  #isSecondary(a: number, b: number): boolean {
    const { count: n, next } = this.#boundary;
    const p = this.#links[2 * a + SITE];
    const q = this.#links[2 * b + SITE];
    return p < n ? q === n + next[p] || q === n + p : q < n && (p === n + q || p === n + next[q]);
  }

  /** Closes the cell of instance b between a and c, which are neighbours from then on. */
  #close(a: number, b: number, c: number): void {
    pollStep();
    const numbers = this.#numbers;
    const links = this.#links;
    const graph = this.graph;
    const before = links[2 * a + AWAY];
    const node = this.#end(a, b);
    const away = graph.addEdge(node, links[2 * a + SITE], links[2 * c + SITE]);
    graph.nextHalf[links[2 * b + AWAY]] = away;
    graph.nextHalf[away ^ 1] = before ^ 1;
    links[2 * a + AWAY] = away;
    links[2 * a + NEXT] = c;
    links[2 * c + PREVIOUS] = a;
    numbers[a + GROWS_X] = numbers[b + X];
    numbers[a + GROWS_Y] = numbers[b + Y];
    numbers[a + GROWS_R] = numbers[b + R];
  }

  /** Ends the edges between the last three instances in one node, where the cell of b closes. */
  #closeLast(b: number): void {
    const numbers = this.#numbers;
    const links = this.#links;
    const graph = this.graph;
    const a = links[2 * b + PREVIOUS];
    const c = links[2 * b + NEXT];
    for (const at of [a, b, c]) {
      const r = numbers[b + R];
      if (!(r < Infinity && r >= numbers[at + GROWS_R] * (1 - LEVEL_REL_TOL))) {
        // all touch one disc that is known already
        this.#closeWhere(b, at);
      }
    }
    const last = links[2 * c + AWAY];
    graph.leadTo(last, this.#end(a, b));
    graph.nextHalf[last] = links[2 * a + AWAY] ^ 1;
    graph.nextHalf[links[2 * b + AWAY]] = last ^ 1;
  }

  /** Ends the edges between a and b and after b in a node where the cell of b closes; that node. */
  #end(a: number, b: number): number {
    const numbers = this.#numbers;
    const links = this.#links;
    const graph = this.graph;
    const node = graph.addNode(numbers[b + X], numbers[b + Y], numbers[b + R]);
    // NaN equals no key: entries of a closed cell are passed over
    numbers[b + DUE] = Number.NaN;
    const before = links[2 * a + AWAY];
    const after = links[2 * b + AWAY];
    // both half-edges go up
    graph.edgeTo[before >> 1] = node;
    graph.edgeTo[after >> 1] = node;
    graph.nextHalf[before] = after ^ 1;
    return node;
  }
}
