import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { CornerTails, type Tail } from './corner-tails.ts';
import { mouthCircuits, type OpenStrand } from './mouth-circuits.ts';
import { offsetPoint, type Strand, StrandTracer } from './offset-strands.ts';
import type { Ring, RingLink } from './tour-rings.ts';
import { type Disc, liesIn, type TrimmedStrand, trimStrand } from './trim-strand.ts';

/** What is to be covered by rings. */
export interface Nesting {
  /** Axis edges, no spokes, highest first. */
  readonly edges: Int32Array;
  /** Clearance from which on all is done already; infinity for nothing done. */
  readonly wide: number;
  /** Clearances of the rings, rising. */
  readonly levels: readonly number[];
  /** Radius of the discs around wide places in which centres add nothing: there straight moves between strands are free. */
  readonly discRadius: number;
  readonly overlap: number;
  readonly ignore: number;
  /** Radius of the cutter, where rounds are farther apart than that and nothing was done before: corners between them get ways of their own. */
  readonly tailRadius: number | undefined;
}

/** Rings at all levels, and links that tie those together that hang together, without a loop. */
export interface NestedRings {
  readonly rings: readonly Ring[];
  readonly links: readonly RingLink[];
}

/** All rings of a nesting; coordinates are relative to the axis' origin. */
export function nestedRings(axis: MedialAxis, nesting: Nesting): NestedRings {
  return new RingNester(axis, nesting).run();
}

class RingNester {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;
  readonly #nesting: Nesting;
  readonly #tracer: StrandTracer;
  readonly #tails: CornerTails | undefined;
  readonly #strands: Strand[] = [];
  /** What is kept of each open strand; undefined for closed ones and those that add nothing. */
  readonly #kept: (TrimmedStrand | undefined)[] = [];
  /** Links between strands, in whose numbers they are given. */
  readonly #links: RingLink[] = [];
  /** Some strand that ends at each wide place. */
  readonly #atWide = new Map<number, number>();
  readonly #parent: number[] = [];

  constructor(axis: MedialAxis, nesting: Nesting) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#nesting = nesting;
    this.#tracer = new StrandTracer(axis, nesting.wide);
    const { tailRadius } = nesting;
    this.#tails = tailRadius === undefined ? undefined : new CornerTails(axis, tailRadius);
  }

  run(): NestedRings {
    const { edges, levels } = this.#nesting;
    const { edgeTo, nodeR } = this.#axis;
    let inner: { strand: Strand; id: number; move: number }[] = [];
    let count = 0;
    let above = Infinity;
    // from the innermost ring outwards, so that each level is traced once and forgotten
    for (let k = levels.length - 1; k >= 0; k--) {
      const level = levels[k];
      while (count < edges.length && nodeR[edgeTo[edges[count]]] >= level) {
        count++;
      }
      const active = edges.subarray(0, count);
      const first = this.#strands.length;
      const strands = this.#tracer.trace(level, active, first);
      for (const strand of strands) {
        this.#take(strand);
      }
      this.#joinAtWide(first);
      for (const { strand, id, move } of inner) {
        this.#linkInwards(strand, id, move, level);
      }
      this.#linkAcross(active, level);
      this.#addTails(active, level, k > 0 ? levels[k - 1] : undefined, above);
      above = level;
      inner = strands.flatMap((strand, i) =>
        strand.startEdge < 0 ? [{ strand, id: first + i, move: this.#tracer.moveOf[strand.half] }] : [],
      );
    }
    return this.#assemble();
  }

  #take(strand: Strand): void {
    this.#parent.push(this.#strands.length);
    this.#strands.push(strand);
    this.#kept.push(strand.startEdge < 0 ? undefined : this.#trimmed(strand));
  }

  #trimmed(strand: Strand): TrimmedStrand | undefined {
    const { discRadius, overlap, ignore } = this.#nesting;
    const start = this.#discAt(strand.startEdge, discRadius + ignore);
    if (strand.startEdge === strand.endEdge && liesIn(strand.points, start)) {
      return undefined;
    }
    const end = this.#discAt(strand.endEdge, discRadius - overlap);
    return trimStrand(strand.points, { ...start, radius: discRadius - overlap }, end);
  }

  #discAt(e: number, radius: number): Disc {
    this.#edge.load(e);
    this.#edge.at(this.#nesting.wide);
    return { x: this.#edge.x, y: this.#edge.y, radius };
  }

  /** Strands that end at one wide place hang together. */
  #joinAtWide(first: number): void {
    for (let id = first; id < this.#strands.length; id++) {
      if (this.#kept[id] === undefined) {
        continue;
      }
      const { startEdge, endEdge } = this.#strands[id];
      for (const e of [startEdge, endEdge]) {
        const other = this.#atWide.get(e);
        if (other === undefined) {
          this.#atWide.set(e, id);
        } else {
          this.#unite(id, other);
        }
      }
    }
  }

  /** Ties a closed strand to the one around it, straight along the normal of a site that both pass. */
  #linkInwards(strand: Strand, id: number, move: number, level: number): void {
    const { edgeTo, edgeLeft, edgeRight, nodeX, nodeY } = this.#axis;
    const h = strand.half;
    const outer = this.#tracer.strandOf[h];
    const outerMove = this.#tracer.moveOf[h];
    if (!this.#isUsable(outer, outerMove) || !this.#unite(id, outer)) {
      return;
    }
    const site = (h & 1) === 1 ? edgeLeft[h >> 1] : edgeRight[h >> 1];
    const top = edgeTo[h >> 1];
    const [ax, ay] = offsetPoint(this.#axis, site, nodeX[top], nodeY[top], level);
    const [bx, by] = offsetPoint(this.#axis, site, nodeX[top], nodeY[top], strand.clearance);
    this.#links.push({
      ringA: outer,
      moveA: outerMove,
      ax,
      ay,
      ringB: id,
      moveB: move,
      bx,
      by,
      via: undefined,
    });
  }

  /** Ties strands that still are apart across the axis where they come nearest to each other. */
  #linkAcross(active: Int32Array, level: number): void {
    const { edgeFrom, edgeLeft, edgeRight, nodeX, nodeY, nodeR } = this.#axis;
    const { strandOf, moveOf } = this.#tracer;
    const places: number[] = [];
    for (const e of active) {
      const isApart =
        nodeR[edgeFrom[e]] >= level &&
        nodeR[edgeFrom[e]] < this.#nesting.wide &&
        this.#find(strandOf[2 * e]) !== this.#find(strandOf[2 * e + 1]);
      if (
        isApart &&
        this.#isUsable(strandOf[2 * e], moveOf[2 * e]) &&
        this.#isUsable(strandOf[2 * e + 1], moveOf[2 * e + 1])
      ) {
        places.push(e);
      }
    }
    places.sort((a, b) => nodeR[edgeFrom[a]] - nodeR[edgeFrom[b]]);
    for (const e of places) {
      const [right, left] = [strandOf[2 * e], strandOf[2 * e + 1]];
      if (!this.#unite(left, right)) {
        continue;
      }
      const x = nodeX[edgeFrom[e]];
      const y = nodeY[edgeFrom[e]];
      const [ax, ay] = offsetPoint(this.#axis, edgeLeft[e], x, y, level);
      const [bx, by] = offsetPoint(this.#axis, edgeRight[e], x, y, level);
      this.#links.push({
        ringA: left,
        moveA: moveOf[2 * e + 1],
        ax,
        ay,
        ringB: right,
        moveB: moveOf[2 * e],
        bx,
        by,
        via: [x, y],
      });
    }
  }

  /** Adds the ways into what this level, the one outside it and the one above it leave uncovered. */
  #addTails(active: Int32Array, level: number, outer: number | undefined, above: number): void {
    const { edgeFrom, edgeTo, edgeLeft, nodeX, nodeY, nodeR } = this.#axis;
    const { strandOf, moveOf } = this.#tracer;
    const { tailRadius } = this.#nesting;
    const tails = this.#tails;
    if (tails === undefined || tailRadius === undefined) {
      return;
    }
    for (const e of active) {
      const top = edgeTo[e];
      if (outer !== undefined && nodeR[edgeFrom[e]] < level) {
        const tail = tails.fromMouth(e, level, outer);
        if (tail !== undefined) {
          this.#hang(tail, strandOf[2 * e], moveOf[2 * e], tail[0], tail[1]);
        }
      }
      if (nodeR[top] > level + tailRadius && nodeR[top] < above && tails.isTop(e)) {
        const [x, y] = offsetPoint(this.#axis, edgeLeft[e], nodeX[top], nodeY[top], level);
        this.#hang(tails.fromTop(e, level), strandOf[2 * e + 1], moveOf[2 * e + 1], x, y);
      }
    }
  }

  /** Adds a closed way of its own, tied by its first point to a place on a strand. */
  #hang(tail: Tail, strand: number, move: number, x: number, y: number): void {
    const id = this.#strands.length;
    this.#take({ clearance: 0, points: tail, startEdge: -1, endEdge: -1, half: -1 });
    this.#unite(id, strand);
    const [bx, by] = tail;
    this.#links.push({
      ringA: strand,
      moveA: move,
      ax: x,
      ay: y,
      ringB: id,
      moveB: 0,
      bx,
      by,
      via: undefined,
    });
  }

  /** Whether a move of a strand is kept whole. */
  #isUsable(id: number, move: number): boolean {
    const kept = this.#kept[id];
    return this.#strands[id].startEdge < 0 || (kept !== undefined && move >= kept.from && move < kept.to);
  }

  #find(id: number): number {
    let at = id;
    while (this.#parent[at] !== at) {
      this.#parent[at] = this.#parent[this.#parent[at]];
      at = this.#parent[at];
    }
    return at;
  }

  /** Whether both hung apart until now. */
  #unite(a: number, b: number): boolean {
    const [ra, rb] = [this.#find(a), this.#find(b)];
    this.#parent[ra] = rb;
    return ra !== rb;
  }

  /** Open strands become rings by way of the wide places, ahead of all others; links are given in rings instead of strands. */
  #assemble(): NestedRings {
    const open: OpenStrand[] = [];
    this.#strands.forEach(({ startEdge, endEdge }, id) => {
      const kept = this.#kept[id];
      if (startEdge >= 0 && kept !== undefined) {
        open.push({ id, points: kept.points, startEdge, endEdge });
      }
    });
    const circuits = mouthCircuits(open);
    const rings = circuits.rings.map((points, k): Ring => {
      const { x, y } = this.#discAt(Math.max(0, circuits.hubs[k]), 0);
      return circuits.hubs[k] < 0 ? { points, isLoose: true } : { points, isLoose: true, hub: [x, y] };
    });
    const ringOf = new Int32Array(this.#strands.length).fill(-1);
    this.#strands.forEach(({ points, startEdge }, id) => {
      if (startEdge < 0) {
        ringOf[id] = rings.length;
        rings.push({ points, isLoose: false });
      }
    });
    const place = (id: number, move: number): [number, number] => {
      const kept = this.#kept[id];
      const at = circuits.places.get(id);
      if (kept === undefined || at === undefined) {
        return [ringOf[id], move];
      }
      const within = move - kept.shift;
      const turned = at.isBack ? kept.points.length / 3 - 2 - within : within;
      return [at.ring, at.offset + turned];
    };
    const links = this.#links.map((link) => {
      const [ringA, moveA] = place(link.ringA, link.moveA);
      const [ringB, moveB] = place(link.ringB, link.moveB);
      return { ...link, ringA, moveA, ringB, moveB };
    });
    return { rings, links };
  }
}
