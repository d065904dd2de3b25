import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { CHORD_TOLERANCE_MM } from '../../tolerances.ts';

/** A closed path down along the axis and back up: `[x, y, bulge, …]`, relative to the axis' origin. */
export type Tail = number[];

/**
 * Tails: paths into the corners, and to the tops of the axis, that two offset loops leave uncovered when they
 * are farther apart than the radius. Between loops at clearances p and n, the uncovered points lie near the
 * axis where its clearance is between p + radius and n: a point with a clearance of at least p + radius is at
 * most n − p − radius away from the axis.
 */
export class CornerTails {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;
  readonly #radius: number;
  /** Edges that end at each node from below. */
  readonly #first: Int32Array;
  readonly #below: Int32Array;
  readonly #hasRise: Uint8Array;

  constructor(axis: MedialAxis, radius: number) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#radius = radius;
    const { edgeFrom, edgeTo, nodeR } = axis;
    this.#first = new Int32Array(nodeR.length + 1);
    this.#hasRise = new Uint8Array(nodeR.length);
    const count = edgeFrom.length;
    for (let e = 0; e < count; e++) {
      pollStep();
      if (!this.#edge.isSecondary(e)) {
        this.#first[edgeTo[e] + 1]++;
        this.#hasRise[edgeFrom[e]] = 1;
      }
    }
    for (let v = 0; v < nodeR.length; v++) {
      this.#first[v + 1] += this.#first[v];
    }
    const fill = this.#first.slice(0, nodeR.length);
    this.#below = new Int32Array(this.#first[nodeR.length]);
    for (let e = 0; e < count; e++) {
      pollStep();
      if (!this.#edge.isSecondary(e)) {
        this.#below[fill[edgeTo[e]]++] = e;
      }
    }
  }

  /**
   * Whether the high end of an edge is a top of the axis, and the edge is the first of those that end there.
   */
  isTop(e: number): boolean {
    const top = this.#axis.edgeTo[e];
    return this.#hasRise[top] === 0 && this.#below[this.#first[top]] === e;
  }

  /**
   * The tail from where edge e has clearance `level` down to where the loop at `outer` covers everything;
   * undefined where nothing is uncovered.
   */
  fromCrossing(e: number, level: number, outer: number): Tail | undefined {
    this.#edge.load(e);
    this.#edge.at(level);
    return this.#walk([this.#edge.x, this.#edge.y], [e], level, outer + this.#radius);
  }

  /** The tail down on all sides from the high end of edge e; at least that point. */
  fromTop(e: number, outer: number): Tail {
    const top = this.#axis.edgeTo[e];
    const { nodeX, nodeY } = this.#axis;
    const edges = this.#below.subarray(this.#first[top], this.#first[top + 1]);
    const start: [number, number] = [nodeX[top], nodeY[top]];
    return this.#walk(start, edges, Infinity, outer + this.#radius) ?? [start[0], start[1], 0];
  }

  #walk(
    start: readonly [number, number],
    edges: ArrayLike<number>,
    top: number,
    floor: number,
  ): Tail | undefined {
    const needed = this.#neededBelow(edges, top, floor);
    const tail: Tail = [start[0], start[1], 0];
    const stack = this.#entered(edges, needed);
    if (stack.length === 0) {
      return undefined;
    }
    for (let step = stack.pop(); step !== undefined; step = stack.pop()) {
      pollStep();
      const path = this.#pointsBetween(step.edge, floor, top);
      if (step.isBack) {
        for (let i = 3; i < path.length; i++) {
          tail.push(path[i]);
        }
        continue;
      }
      for (let i = path.length - 6; i >= 0; i -= 3) {
        tail.push(path[i], path[i + 1], 0);
      }
      stack.push({ edge: step.edge, isBack: true }, ...this.#entered(this.#edgesBelow(step.edge), needed));
    }
    return tail;
  }

  #entered(edges: ArrayLike<number>, needed: ReadonlySet<number>): { edge: number; isBack: boolean }[] {
    return Array.from(edges, (edge) => ({ edge, isBack: false })).filter(({ edge }) => needed.has(edge));
  }

  #edgesBelow(e: number): Int32Array {
    const v = this.#axis.edgeFrom[e];
    return this.#below.subarray(this.#first[v], this.#first[v + 1]);
  }

  /**
   * The edges along or below which the disc at the start does not cover everything: an uncovered point beside
   * the axis at clearance R is at most (distance along the axis) + R − floor from the start, which cannot
   * grow on the way up.
   */
  #neededBelow(edges: ArrayLike<number>, top: number, floor: number): Set<number> {
    const { edgeFrom, nodeR } = this.#axis;
    const walked: { edge: number; along: number; from: number }[] = [];
    const open = Array.from(edges, (edge) => ({ edge, along: 0, from: -1 }));
    const needed = new Set<number>();
    for (let item = open.pop(); item !== undefined; item = open.pop()) {
      pollStep();
      const { edge: e } = item;
      const low = Math.max(nodeR[edgeFrom[e]], floor);
      this.#edge.load(e);
      const along = item.along + this.#edge.length(low, Math.min(this.#edge.r1, top));
      walked.push(item);
      if (along + low - floor > this.#radius) {
        needed.add(e);
      }
      if (nodeR[edgeFrom[e]] > floor) {
        for (const below of this.#edgesBelow(e)) {
          open.push({ edge: below, along, from: e });
        }
      }
    }
    for (const { edge, from } of walked.reverse()) {
      if (from >= 0 && needed.has(edge)) {
        needed.add(from);
      }
    }
    return needed;
  }

  /** Points of edge e between two clearances, rising. */
  #pointsBetween(e: number, floor: number, top: number): number[] {
    const edge = this.#edge;
    edge.load(e);
    const from = edge.r0 >= floor ? 0 : edge.shareOf(floor);
    const to = edge.shareOf(top);
    edge.atShare((from + to) / 2);
    const [mx, my] = [edge.x, edge.y];
    const ends: number[] = [];
    for (const share of [from, to]) {
      edge.atShare(share);
      ends.push(edge.x, edge.y);
    }
    // the deviation of equal chords from a parabola falls with the square of their number
    const off = Math.hypot(mx - (ends[0] + ends[2]) / 2, my - (ends[1] + ends[3]) / 2);
    const chords = Math.max(1, Math.ceil(Math.sqrt(off / CHORD_TOLERANCE_MM)));
    const points: number[] = [];
    for (let k = 0; k <= chords; k++) {
      edge.atShare(from + ((to - from) * k) / chords);
      points.push(edge.x, edge.y, 0);
    }
    return points;
  }
}
