import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { inGrains, pollStep, UnionFind } from '@pourproof/plane';
import { type OffsetCurve, OffsetTracer, offsetPoint } from '../offset-curves.ts';
import { CornerTails, type Tail } from './corner-tails.ts';
import { curveCircuits, type OpenCurve } from './curve-circuits.ts';
import type { Loop, LoopLink } from './tour-loops.ts';
import { type Disc, liesIn, type TrimmedCurve, trimCurve } from './trim-curve.ts';

/** What the loops have to cover. */
export interface Nesting {
  /** Axis edges, secondary ones left out, those that rise to a higher level first. */
  readonly edges: Int32Array;
  /** Clearance from which everything is cut already; Infinity if nothing is. */
  readonly wide: number;
  /** Clearances of the loops, in rising order. */
  readonly levels: readonly number[];
  /**
   * Radius of the discs around wide places, the points of the axis with clearance `wide`, in which a centre
   * adds nothing and straight moves between curves are free.
   */
  readonly discRadius: number;
  readonly overlap: number;
  readonly ignore: number;
  /**
   * Radius of the cutter if loops are farther apart than that, and nothing is cut yet: corners between them
   * get tails.
   */
  readonly tailRadius: number | undefined;
}

/** Loops at all levels, and the links between them: a spanning forest, one tree for each connected part. */
export interface OffsetLoops {
  readonly loops: readonly Loop[];
  readonly links: readonly LoopLink[];
}

/** Traces and links all loops; coordinates are relative to the axis' origin. */
export function offsetLoops(axis: MedialAxis, nesting: Nesting): OffsetLoops {
  return new LoopNester(axis, nesting).run();
}

class LoopNester {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;
  readonly #nesting: Nesting;
  readonly #tracer: OffsetTracer;
  readonly #tails: CornerTails | undefined;
  readonly #curves: OffsetCurve[] = [];
  /** What is kept of each open curve; undefined for closed ones and for those that add nothing. */
  readonly #kept: (TrimmedCurve | undefined)[] = [];
  /** Links between curves, by the numbers of the curves. */
  readonly #links: LoopLink[] = [];
  /** Some curve that ends at each wide place. */
  readonly #atWide = new Map<number, number>();
  /** Curves that hang together by links or wide places. */
  readonly #joined: UnionFind = new UnionFind();

  constructor(axis: MedialAxis, nesting: Nesting) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#nesting = nesting;
    this.#tracer = new OffsetTracer(axis, nesting.wide);
    const { tailRadius } = nesting;
    this.#tails = tailRadius === undefined ? undefined : new CornerTails(axis, tailRadius);
  }

  run(): OffsetLoops {
    const { edges, levels } = this.#nesting;
    const { edgeTo, nodeR } = this.#axis;
    let inner: { curve: OffsetCurve; id: number; move: number }[] = [];
    let count = 0;
    let above = Infinity;
    // innermost level first: each one is traced once, and only its closed curves are remembered
    for (let k = levels.length - 1; k >= 0; k--) {
      const level = levels[k];
      while (count < edges.length && nodeR[edgeTo[edges[count]]] >= level) {
        count++;
      }
      const active = edges.subarray(0, count);
      const first = this.#curves.length;
      const curves = this.#tracer.trace(level, active, first);
      for (const curve of curves) {
        this.#take(curve);
      }
      this.#joinAtWide(first);
      for (const { curve, id, move } of inner) {
        this.#linkInwards(curve, id, move, level);
      }
      this.#linkAcross(active, level);
      this.#addTails(active, level, k > 0 ? levels[k - 1] : undefined, above);
      above = level;
      inner = curves.flatMap((curve, i) =>
        curve.startEdge < 0 ? [{ curve, id: first + i, move: this.#tracer.moveOf[curve.half] }] : [],
      );
    }
    return this.#assemble();
  }

  #take(curve: OffsetCurve): void {
    this.#joined.add();
    this.#curves.push(curve);
    this.#kept.push(curve.startEdge < 0 ? undefined : this.#trimmed(curve));
  }

  #trimmed(curve: OffsetCurve): TrimmedCurve | undefined {
    const { discRadius, overlap, ignore } = this.#nesting;
    const start = this.#discAt(curve.startEdge, discRadius + ignore);
    if (curve.startEdge === curve.endEdge && liesIn(curve.points, start)) {
      return undefined;
    }
    const end = this.#discAt(curve.endEdge, discRadius - overlap);
    return trimCurve(curve.points, { ...start, radius: discRadius - overlap }, end);
  }

  #discAt(e: number, radius: number): Disc {
    this.#edge.load(e);
    this.#edge.at(this.#nesting.wide);
    return { x: this.#edge.x, y: this.#edge.y, radius };
  }

  /** Unites the curves that end at the same wide place. */
  #joinAtWide(first: number): void {
    for (let id = first; id < this.#curves.length; id++) {
      if (this.#kept[id] === undefined) {
        continue;
      }
      const { startEdge, endEdge } = this.#curves[id];
      for (const e of [startEdge, endEdge]) {
        const other = this.#atWide.get(e);
        if (other === undefined) {
          this.#atWide.set(e, id);
        } else {
          this.#joined.join(id, other);
        }
      }
    }
  }

  /** Links a closed curve to the one around it, along the normal of a site that both pass. */
  #linkInwards(curve: OffsetCurve, id: number, move: number, level: number): void {
    const { edgeTo, edgeLeft, edgeRight, nodeX, nodeY } = this.#axis;
    const h = curve.half;
    const outer = this.#tracer.curveOf[h];
    const outerMove = this.#tracer.moveOf[h];
    if (!this.#isUsable(outer, outerMove) || !this.#joined.join(id, outer)) {
      return;
    }
    const site = (h & 1) === 1 ? edgeLeft[h >> 1] : edgeRight[h >> 1];
    const top = edgeTo[h >> 1];
    const [ax, ay] = offsetPoint(this.#axis, site, nodeX[top], nodeY[top], level);
    const [bx, by] = offsetPoint(this.#axis, site, nodeX[top], nodeY[top], curve.clearance);
    this.#links.push({
      loopA: outer,
      moveA: outerMove,
      ax,
      ay,
      loopB: id,
      moveB: move,
      bx,
      by,
      via: undefined,
    });
  }

  /** Links curves that are still separate across the axis, where they come nearest to each other. */
  #linkAcross(active: Int32Array, level: number): void {
    const { edgeFrom, edgeLeft, edgeRight, nodeX, nodeY, nodeR } = this.#axis;
    const { curveOf, moveOf } = this.#tracer;
    const places: number[] = [];
    for (const e of active) {
      pollStep();
      const isApart =
        nodeR[edgeFrom[e]] >= level &&
        nodeR[edgeFrom[e]] < this.#nesting.wide &&
        this.#joined.find(curveOf[2 * e]) !== this.#joined.find(curveOf[2 * e + 1]);
      if (
        isApart &&
        this.#isUsable(curveOf[2 * e], moveOf[2 * e]) &&
        this.#isUsable(curveOf[2 * e + 1], moveOf[2 * e + 1])
      ) {
        places.push(e);
      }
    }
    places.sort((a, b) => inGrains(nodeR[edgeFrom[a]]) - inGrains(nodeR[edgeFrom[b]]) || a - b);
    for (const e of places) {
      pollStep();
      const [right, left] = [curveOf[2 * e], curveOf[2 * e + 1]];
      if (!this.#joined.join(left, right)) {
        continue;
      }
      const x = nodeX[edgeFrom[e]];
      const y = nodeY[edgeFrom[e]];
      const [ax, ay] = offsetPoint(this.#axis, edgeLeft[e], x, y, level);
      const [bx, by] = offsetPoint(this.#axis, edgeRight[e], x, y, level);
      this.#links.push({
        loopA: left,
        moveA: moveOf[2 * e + 1],
        ax,
        ay,
        loopB: right,
        moveB: moveOf[2 * e],
        bx,
        by,
        via: [x, y],
      });
    }
  }

  /** Adds tails into what this level and its neighbours leave uncovered. */
  #addTails(active: Int32Array, level: number, outer: number | undefined, above: number): void {
    const { edgeFrom, edgeTo, edgeLeft, nodeX, nodeY, nodeR } = this.#axis;
    const { curveOf, moveOf } = this.#tracer;
    const { tailRadius } = this.#nesting;
    const tails = this.#tails;
    if (tails === undefined || tailRadius === undefined) {
      return;
    }
    for (const e of active) {
      pollStep();
      const top = edgeTo[e];
      if (outer !== undefined && nodeR[edgeFrom[e]] < level) {
        const tail = tails.fromCrossing(e, level, outer);
        if (tail !== undefined) {
          this.#hang(tail, curveOf[2 * e], moveOf[2 * e], tail[0], tail[1]);
        }
      }
      if (nodeR[top] > level + tailRadius && nodeR[top] < above && tails.isTop(e)) {
        const [x, y] = offsetPoint(this.#axis, edgeLeft[e], nodeX[top], nodeY[top], level);
        this.#hang(tails.fromTop(e, level), curveOf[2 * e + 1], moveOf[2 * e + 1], x, y);
      }
    }
  }

  /** Adds a tail as a closed curve, linked by its first point to a place on another curve. */
  #hang(tail: Tail, curve: number, move: number, x: number, y: number): void {
    const id = this.#curves.length;
    this.#take({ clearance: 0, points: tail, startEdge: -1, endEdge: -1, half: -1 });
    this.#joined.join(id, curve);
    const [bx, by] = tail;
    this.#links.push({
      loopA: curve,
      moveA: move,
      ax: x,
      ay: y,
      loopB: id,
      moveB: 0,
      bx,
      by,
      via: undefined,
    });
  }

  /** Whether a move of a curve is kept uncut. */
  #isUsable(id: number, move: number): boolean {
    const kept = this.#kept[id];
    return this.#curves[id].startEdge < 0 || (kept !== undefined && move >= kept.from && move < kept.to);
  }

  /**
   * Joins open curves into loops at the wide places and renumbers the links from curves to loops; these loops
   * come first.
   */
  #assemble(): OffsetLoops {
    const open: OpenCurve[] = [];
    this.#curves.forEach(({ startEdge, endEdge }, id) => {
      const kept = this.#kept[id];
      if (startEdge >= 0 && kept !== undefined) {
        open.push({ id, points: kept.points, startEdge, endEdge });
      }
    });
    const circuits = curveCircuits(open);
    const loops = circuits.loops.map((points, k): Loop => {
      const { x, y } = this.#discAt(Math.max(0, circuits.hubs[k]), 0);
      return circuits.hubs[k] < 0 ? { points, isLoose: true } : { points, isLoose: true, hub: [x, y] };
    });
    const loopOf = new Int32Array(this.#curves.length).fill(-1);
    this.#curves.forEach(({ points, startEdge }, id) => {
      if (startEdge < 0) {
        loopOf[id] = loops.length;
        loops.push({ points, isLoose: false });
      }
    });
    const place = (id: number, move: number): [number, number] => {
      const kept = this.#kept[id];
      const at = circuits.places.get(id);
      if (kept === undefined || at === undefined) {
        return [loopOf[id], move];
      }
      const within = move - kept.shift;
      const turned = at.isBack ? kept.points.length / 3 - 2 - within : within;
      return [at.loop, at.offset + turned];
    };
    const links = this.#links.map((link) => {
      const [loopA, moveA] = place(link.loopA, link.moveA);
      const [loopB, moveB] = place(link.loopB, link.moveB);
      return { ...link, loopA, moveA, loopB, moveB };
    });
    return { loops, links };
  }
}
