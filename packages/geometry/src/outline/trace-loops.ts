import { invariant } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { ArcRingPen } from './arc-ring-pen.ts';
import type { ArcRings } from './arc-rings.ts';
import type { Mouths } from './mouths.ts';
import type { OpenArcs } from './open-arcs.ts';

/** Points closer than this share of the artwork's extent are one point: the rounding of a handful of operations. */
const CLOSENESS_SHARE = 8 * Number.EPSILON;

/** What the cutter takes, or what it leaves standing. */
export type LoopSide = 'taken' | 'left';

/** Closed outlines of what the cutter takes or leaves, absolute; loop k is ring k. */
export interface Loops {
  readonly rings: ArcRings;
  /** Mouths whose arcs each loop runs along. */
  readonly mouths: readonly (readonly number[])[];
  /** An axis edge beside each loop. */
  readonly edge: readonly number[];
}

/**
 * Walks around all parts of the axis on one side of the radius: `taken`, where the clearance is at least the radius, gives the outlines of
 * what the cutter takes, `left` those of what it leaves. Boundary points keep their coordinates to the bit.
 */
export function traceLoops(axis: MedialAxis, mouths: Mouths, arcs: OpenArcs, side: LoopSide): Loops {
  const { edgeTo, nodeR, nextHalf } = axis;
  const { edge, ofEdge, radius } = mouths;
  const isTaken = side === 'taken';
  const tracer = new LoopTracer(axis, mouths, arcs, side);
  // loops with mouths start at one; what is left unseen after that has none
  for (let k = 0; k < edge.length; k++) {
    tracer.traceFromMouth(k);
  }
  for (let e = 0; e < edgeTo.length; e++) {
    const isFromBoundary = nextHalf[2 * e + 1] === 2 * e;
    if (isFromBoundary && ofEdge[e] < 0 && nodeR[edgeTo[e]] >= radius === isTaken) {
      tracer.traceFromBoundary(e);
    }
  }
  return tracer.loops();
}

class LoopTracer {
  readonly #axis: MedialAxis;
  readonly #mouths: Mouths;
  readonly #arcs: OpenArcs;
  /** 0 where walks end going up at a mouth, 1 where they end going down. */
  readonly #stopAt: 0 | 1;
  /** Edges that start at the boundary and have been passed there. */
  readonly #isPassed: Uint8Array;
  readonly #isLeft: Uint8Array;
  readonly #pen: ArcRingPen;
  readonly #mouthsOf: number[][] = [];
  readonly #edgeOf: number[] = [];
  /** Half-edges that may still be walked: on one side of the radius each is walked once. */
  #stepsLeft: number;

  constructor(axis: MedialAxis, mouths: Mouths, arcs: OpenArcs, side: LoopSide) {
    this.#axis = axis;
    this.#mouths = mouths;
    this.#arcs = arcs;
    this.#stopAt = side === 'taken' ? 1 : 0;
    this.#isPassed = new Uint8Array(axis.edgeFrom.length);
    this.#stepsLeft = axis.nextHalf.length;
    this.#isLeft = new Uint8Array(mouths.edge.length);
    const { count, extent } = axis.boundary;
    this.#pen = new ArcRingPen(count + 3 * arcs.from.length, extent * CLOSENESS_SHARE);
  }

  /** All loops so far. */
  loops(): Loops {
    return { rings: this.#pen.rings(), mouths: this.#mouthsOf, edge: this.#edgeOf };
  }

  /** The loop that leaves mouth k along the boundary, if it is new. */
  traceFromMouth(k: number): void {
    if (this.#isLeft[k] !== 0) {
      return;
    }
    const along: number[] = [];
    let mouth = k;
    do {
      this.#isLeft[mouth] = 1;
      mouth = this.#followArcs(this.#followBoundary(mouth), along);
    } while (this.#isLeft[mouth] === 0);
    this.#lift(along, this.#mouths.edge[k]);
  }

  /** The loop past the boundary point where edge e starts, if it is new; no mouth lies on it. */
  traceFromBoundary(e: number): void {
    if (this.#isPassed[e] === 0) {
      this.#walk(2 * e + 1, -1);
      this.#lift([], e);
    }
  }

  #lift(mouths: number[], edge: number): void {
    if (this.#pen.lift()) {
      this.#mouthsOf.push(mouths);
      this.#edgeOf.push(edge);
    }
  }

  /** Walks from one wall of a mouth along the boundary; returns the mouth it comes to. */
  #followBoundary(mouth: number): number {
    const { edge, ofEdge } = this.#mouths;
    const stop = this.#stopAt;
    this.#drawContact(mouth, stop === 1);
    const reached = ofEdge[this.#walk(2 * edge[mouth] + 1 - stop, stop) >> 1];
    this.#drawContact(reached, stop === 0);
    return reached;
  }

  /**
   * Walks from half-edge `start` on and draws the boundary points that are passed; returns the half-edge of a mouth where the walk stops, going
   * up or down as `stop` says, or `start` when it comes round to it.
   */
  #walk(start: number, stop: 0 | 1 | -1): number {
    const { nextHalf, edgeLeft } = this.#axis;
    const { count, next } = this.#axis.boundary;
    const { coords } = this.#axis.region;
    const { ofEdge } = this.#mouths;
    const isPassed = this.#isPassed;
    const pen = this.#pen;
    let stepsLeft = this.#stepsLeft;
    let h = start;
    do {
      invariant(stepsLeft-- > 0, 'a walk around the axis comes back to where it began');
      const after = nextHalf[h];
      if (after === h - 1 && (h & 1) === 1) {
        // down to a boundary point and up again; a reflex point is met on two spokes and drawn on the first
        isPassed[h >> 1] = 1;
        const site = edgeLeft[h >> 1];
        if (site < count) {
          pen.draw(coords[2 * next[site]], coords[2 * next[site] + 1]);
        }
      }
      h = after;
    } while (h !== start && ((h & 1) !== stop || ofEdge[h >> 1] < 0));
    this.#stepsLeft = stepsLeft;
    return h;
  }

  /** Draws the arcs from one wall of a mouth on; returns the mouth at whose other wall they end. */
  #followArcs(mouth: number, along: number[]): number {
    const { first, from, to, startBy, endBy } = this.#arcs;
    const isForth = this.#stopAt === 1;
    let k = mouth;
    let arc = isForth ? first[k] : first[k + 1] - 1;
    for (;;) {
      along.push(k);
      const bulge = Math.tan((to[arc] - from[arc]) / 4);
      this.#pen.bend(isForth ? bulge : -bulge);
      const onto = isForth ? endBy[arc] : startBy[arc];
      if (onto < 0) {
        return k;
      }
      this.#drawOnArc(k, isForth ? to[arc] : from[arc]);
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

  #drawOnArc(mouth: number, angle: number): void {
    const { x, y, radius, angle: start } = this.#mouths;
    const { originX, originY } = this.#axis.boundary;
    const turn = start[mouth] + angle;
    this.#pen.draw(
      originX + x[mouth] + radius * Math.cos(turn),
      originY + y[mouth] + radius * Math.sin(turn),
    );
  }

  #drawContact(mouth: number, isRight: boolean): void {
    const { edge, x, y } = this.#mouths;
    const { boundary, edgeLeft, edgeRight, region } = this.#axis;
    const site = isRight ? edgeRight[edge[mouth]] : edgeLeft[edge[mouth]];
    if (site >= boundary.count) {
      const p = site - boundary.count;
      this.#pen.draw(region.coords[2 * p], region.coords[2 * p + 1]);
      return;
    }
    const ax = boundary.x[site];
    const ay = boundary.y[site];
    const s = (x[mouth] - ax) * boundary.tx[site] + (y[mouth] - ay) * boundary.ty[site];
    this.#pen.draw(
      boundary.originX + ax + s * boundary.tx[site],
      boundary.originY + ay + s * boundary.ty[site],
    );
  }
}
