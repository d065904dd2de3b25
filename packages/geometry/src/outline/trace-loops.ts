import { invariant } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { Mouths } from './mouths.ts';
import type { OpenArcs } from './open-arcs.ts';

/** Points closer than this share of the artwork's extent are one point: the rounding of a handful of operations. */
const CLOSENESS_SHARE = 8 * Number.EPSILON;

/** What the cutter takes, or what it leaves standing. */
export type LoopSide = 'taken' | 'left';

/** One closed outline of what the cutter takes or leaves. */
export interface Loop {
  /** `[x, y, bulge, …]`, absolute. */
  readonly points: number[];
  /** Mouths whose arcs it runs along. */
  readonly mouths: number[];
  /** An axis edge beside the loop. */
  readonly edge: number;
}

/**
 * Walks around all parts of the axis on one side of the radius: `taken`, where the clearance is at least the radius, gives the outlines of
 * what the cutter takes, `left` those of what it leaves. Boundary points keep their coordinates to the bit.
 */
export function traceLoops(axis: MedialAxis, mouths: Mouths, arcs: OpenArcs, side: LoopSide): Loop[] {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const tracer = new LoopTracer(axis, mouths, arcs, side);
  const loops: Loop[] = [];
  // loops with mouths start at one; what is left unseen after that has none
  for (let k = 0; k < mouths.edge.length; k++) {
    tracer.traceFromMouth(k, loops);
  }
  for (let e = 0; e < edgeFrom.length; e++) {
    const isTaken = nodeR[edgeTo[e]] >= mouths.radius;
    if (mouths.ofEdge[e] < 0 && isTaken === (side === 'taken')) {
      tracer.traceWhole(2 * e, loops);
      tracer.traceWhole(2 * e + 1, loops);
    }
  }
  return loops;
}

class LoopTracer {
  readonly #coords: Float64Array;
  readonly #axis: MedialAxis;
  readonly #mouths: Mouths;
  readonly #arcs: OpenArcs;
  /** 0 where walks end going up at a mouth, 1 where they end going down. */
  readonly #stopAt: 0 | 1;
  readonly #seen: Uint8Array;
  readonly #isLeft: Uint8Array;
  readonly #closeness: number;
  #points: number[] = [];
  /** Half-edges that may still be walked: on one side of the radius each is walked once. */
  #stepsLeft: number;

  constructor(axis: MedialAxis, mouths: Mouths, arcs: OpenArcs, side: LoopSide) {
    this.#coords = axis.region.coords;
    this.#axis = axis;
    this.#mouths = mouths;
    this.#arcs = arcs;
    this.#stopAt = side === 'taken' ? 1 : 0;
    this.#seen = new Uint8Array(axis.nextHalf.length);
    this.#stepsLeft = axis.nextHalf.length;
    this.#isLeft = new Uint8Array(mouths.edge.length);
    this.#closeness = axis.boundary.extent * CLOSENESS_SHARE;
  }

  /** The loop that leaves mouth k along the boundary. */
  traceFromMouth(k: number, loops: Loop[]): void {
    if (this.#isLeft[k] !== 0) {
      return;
    }
    this.#points = [];
    const along: number[] = [];
    let mouth = k;
    do {
      this.#isLeft[mouth] = 1;
      mouth = this.#followArcs(this.#followBoundary(mouth), along);
    } while (this.#isLeft[mouth] === 0);
    loops.push({ points: this.#closed(), mouths: along, edge: this.#mouths.edge[k] });
  }

  /** The loop along half-edge h, if it is unseen; no mouth lies on it. */
  traceWhole(h: number, loops: Loop[]): void {
    if (this.#seen[h] !== 0) {
      return;
    }
    this.#points = [];
    let at = h;
    do {
      at = this.#step(at);
    } while (at !== h);
    const points = this.#closed();
    if (points.length > 0) {
      loops.push({ points, mouths: [], edge: h >> 1 });
    }
  }

  /** Walks from one wall of a mouth along the boundary; returns the mouth it comes to. */
  #followBoundary(mouth: number): number {
    const { edge, ofEdge } = this.#mouths;
    const stop = this.#stopAt;
    this.#pushContact(mouth, stop === 1);
    let h = this.#step(2 * edge[mouth] + 1 - stop);
    while ((h & 1) !== stop || ofEdge[h >> 1] < 0) {
      h = this.#step(h);
    }
    this.#seen[h] = 1;
    const reached = ofEdge[h >> 1];
    this.#pushContact(reached, stop === 0);
    return reached;
  }

  /** Marks half-edge h, adds the boundary point that it leads to, if any, and returns the half-edge after it. */
  #step(h: number): number {
    const { nextHalf, edgeLeft, boundary } = this.#axis;
    invariant(this.#stepsLeft-- > 0, 'a walk around the axis comes back to where it began');
    this.#seen[h] = 1;
    const after = nextHalf[h];
    if (after === h - 1 && (h & 1) === 1) {
      // down to a boundary point and up again; a reflex point is met on two spokes and added on the first
      const site = edgeLeft[h >> 1];
      if (site < boundary.count) {
        const p = boundary.next[site];
        this.#push(this.#coords[2 * p], this.#coords[2 * p + 1]);
      }
    }
    return after;
  }

  /** Adds the arcs from one wall of a mouth on; returns the mouth at whose other wall they end. */
  #followArcs(mouth: number, along: number[]): number {
    const { first, from, to, startBy, endBy } = this.#arcs;
    const isForth = this.#stopAt === 1;
    let k = mouth;
    let arc = isForth ? first[k] : first[k + 1] - 1;
    for (;;) {
      along.push(k);
      const bulge = Math.tan((to[arc] - from[arc]) / 4);
      this.#points[this.#points.length - 1] = isForth ? bulge : -bulge;
      const onto = isForth ? endBy[arc] : startBy[arc];
      if (onto < 0) {
        return k;
      }
      this.#pushOnArc(k, isForth ? to[arc] : from[arc]);
      const by = isForth ? startBy : endBy;
      let next = first[onto];
      while (next < first[onto + 1] && by[next] !== k) {
        next++;
      }
      invariant(next < first[onto + 1], 'arcs of overlapping discs end on each other');
      k = onto;
      arc = next;
    }
  }

  #pushOnArc(mouth: number, angle: number): void {
    const { x, y, radius, angle: start } = this.#mouths;
    const { originX, originY } = this.#axis.boundary;
    const turn = start[mouth] + angle;
    this.#push(originX + x[mouth] + radius * Math.cos(turn), originY + y[mouth] + radius * Math.sin(turn));
  }

  #pushContact(mouth: number, isRight: boolean): void {
    const { edge, x, y } = this.#mouths;
    const { boundary, edgeLeft, edgeRight } = this.#axis;
    const site = isRight ? edgeRight[edge[mouth]] : edgeLeft[edge[mouth]];
    if (site >= boundary.count) {
      const p = site - boundary.count;
      this.#push(this.#coords[2 * p], this.#coords[2 * p + 1]);
      return;
    }
    const ax = boundary.x[site];
    const ay = boundary.y[site];
    const s = (x[mouth] - ax) * boundary.tx[site] + (y[mouth] - ay) * boundary.ty[site];
    this.#push(boundary.originX + ax + s * boundary.tx[site], boundary.originY + ay + s * boundary.ty[site]);
  }

  /** Adds a point unless it repeats the one before along a straight edge. */
  #push(x: number, y: number): void {
    const points = this.#points;
    const n = points.length;
    if (n > 0 && points[n - 1] === 0 && this.#isSame(points[n - 3], points[n - 2], x, y)) {
      return;
    }
    points.push(x, y, 0);
  }

  /** The points without a last one that repeats the first; none where fewer than two are left. */
  #closed(): number[] {
    const points = this.#points;
    while (points.length > 3 && points[points.length - 1] === 0) {
      const n = points.length;
      if (!this.#isSame(points[n - 3], points[n - 2], points[0], points[1])) {
        break;
      }
      points.length -= 3;
    }
    return points.length > 3 ? points : [];
  }

  #isSame(ax: number, ay: number, bx: number, by: number): boolean {
    return Math.abs(ax - bx) <= this.#closeness && Math.abs(ay - by) <= this.#closeness;
  }
}
