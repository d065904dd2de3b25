import { COINCIDENT_REL_TOL, invariant, pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { type ArcJoins, joinArcs, onArc } from './arc-joins.ts';
import { ArcRingPen } from './arc-ring-pen.ts';
import type { ArcRings } from './arc-rings.ts';
import type { LevelCrossings } from './level-crossings.ts';
import type { OpenArcs } from './open-arcs.ts';

/** Closed outlines of what the cutter leaves standing, in absolute coordinates; loop k is ring k. */
export interface Loops {
  readonly rings: ArcRings;
  /** LevelCrossings whose arcs each loop runs along. */
  readonly crossings: readonly (readonly number[])[];
  /** An axis edge beside each loop. */
  readonly edge: readonly number[];
}

/**
 * Walks around all parts of the axis where the clearance is less than the radius: the outlines of what the
 * cutter leaves. Boundary points keep their coordinates to the bit.
 */
export function traceLoops(axis: MedialAxis, crossings: LevelCrossings, arcs: OpenArcs): Loops {
  const { edgeTo, nodeR, nextHalf } = axis;
  const { edge, ofEdge, radius } = crossings;
  const tracer = new LoopTracer(axis, crossings, arcs);
  // loops with crossings are traced from one of them; what is left has none
  for (let k = 0; k < edge.length; k++) {
    pollStep();
    tracer.traceFromCrossing(k);
  }
  for (let e = 0; e < edgeTo.length; e++) {
    pollStep();
    const isFromBoundary = nextHalf[2 * e + 1] === 2 * e;
    if (isFromBoundary && ofEdge[e] < 0 && nodeR[edgeTo[e]] < radius) {
      tracer.traceFromBoundary(e);
    }
  }
  for (let k = 0; k < edge.length; k++) {
    pollStep();
    tracer.traceBetweenDiscs(k);
  }
  return tracer.loops();
}

class LoopTracer {
  readonly #axis: MedialAxis;
  readonly #crossings: LevelCrossings;
  readonly #arcs: OpenArcs;
  readonly #joins: ArcJoins;
  /** 1 for edges that start on the boundary and have been passed there. */
  readonly #isPassed: Uint8Array;
  readonly #isLeft: Uint8Array;
  /** 1 for open arcs that a loop runs along. */
  readonly #isArcPassed: Uint8Array;
  readonly #pen: ArcRingPen;
  readonly #crossingsOf: number[][] = [];
  readonly #edgeOf: number[] = [];
  /** Half-edges that may still be walked; each is walked at most once. */
  #stepsLeft: number;

  constructor(axis: MedialAxis, crossings: LevelCrossings, arcs: OpenArcs) {
    this.#axis = axis;
    this.#crossings = crossings;
    this.#arcs = arcs;
    this.#joins = joinArcs(crossings, arcs);
    this.#isPassed = new Uint8Array(axis.edgeFrom.length);
    this.#stepsLeft = axis.nextHalf.length;
    this.#isLeft = new Uint8Array(crossings.edge.length);
    this.#isArcPassed = new Uint8Array(arcs.from.length);
    const { count, extent } = axis.boundary;
    this.#pen = new ArcRingPen(count + 3 * arcs.from.length, extent * COINCIDENT_REL_TOL);
  }

  /** All loops so far. */
  loops(): Loops {
    return { rings: this.#pen.rings(), crossings: this.#crossingsOf, edge: this.#edgeOf };
  }

  /** The loop that leaves crossing k along the boundary, if it is new. */
  traceFromCrossing(k: number): void {
    if (this.#isLeft[k] !== 0) {
      return;
    }
    const along: number[] = [];
    let crossing = k;
    do {
      this.#isLeft[crossing] = 1;
      const reached = this.#followBoundary(crossing);
      crossing = this.#followArcs(reached, this.#arcs.first[reached + 1] - 1, along);
    } while (this.#isLeft[crossing] === 0);
    this.#lift(along, this.#crossings.edge[k]);
  }

  /** The loop past the boundary point where edge e starts, if it is new; no crossing lies on it. */
  traceFromBoundary(e: number): void {
    if (this.#isPassed[e] === 0) {
      this.#walk(2 * e + 1, false);
      this.#lift([], e);
    }
  }

  /** The loops along arcs of crossing k that no wall belongs to: what several discs enclose where short waists meet. */
  traceBetweenDiscs(k: number): void {
    const { first, to } = this.#arcs;
    for (let arc = first[k]; arc < first[k + 1]; arc++) {
      if (this.#isArcPassed[arc] === 0) {
        const along: number[] = [];
        this.#drawOnArc(k, to[arc]);
        this.#followArcs(k, arc, along);
        this.#lift(along, this.#crossings.edge[k]);
      }
    }
  }

  #lift(crossings: number[], edge: number): void {
    if (this.#pen.lift()) {
      this.#crossingsOf.push(crossings);
      this.#edgeOf.push(edge);
    }
  }

  /**
   * Walks from the left wall of a crossing along the boundary; returns the crossing whose right wall it comes
   * to.
   */
  #followBoundary(crossing: number): number {
    const { edge, ofEdge } = this.#crossings;
    this.#drawContact(crossing, false);
    const reached = ofEdge[this.#walk(2 * edge[crossing] + 1, true) >> 1];
    this.#drawContact(reached, true);
    return reached;
  }

  /**
   * Walks from half-edge `start` on and draws the boundary points that are passed; returns the half-edge that
   * goes up to a crossing where the walk stops, if it is to stop there, or `start` when it comes round to it.
   */
  #walk(start: number, stopsAtCrossing: boolean): number {
    const { nextHalf, edgeLeft } = this.#axis;
    const { count, next } = this.#axis.boundary;
    const { coords } = this.#axis.region;
    const { ofEdge } = this.#crossings;
    const isPassed = this.#isPassed;
    const pen = this.#pen;
    let stepsLeft = this.#stepsLeft;
    let h = start;
    do {
      invariant(stepsLeft-- > 0, 'a walk around the axis comes back to where it began');
      const after = nextHalf[h];
      if (after === h - 1 && (h & 1) === 1) {
        // down to a boundary point and up again; a reflex vertex lies on two secondary edges and is drawn at
        // the first
        isPassed[h >> 1] = 1;
        const site = edgeLeft[h >> 1];
        if (site < count) {
          pen.draw(coords[2 * next[site]], coords[2 * next[site] + 1]);
        }
      }
      h = after;
    } while (h !== start && !(stopsAtCrossing && (h & 1) === 0 && ofEdge[h >> 1] >= 0));
    this.#stepsLeft = stepsLeft;
    return h;
  }

  /**
   * Draws the arcs from one of a crossing's back; returns the crossing at whose left wall they end, or where they come round.
   */
  #followArcs(crossing: number, begin: number, along: number[]): number {
    const { from, to } = this.#arcs;
    const { before, discOf } = this.#joins;
    let k = crossing;
    let arc = begin;
    while (this.#isArcPassed[arc] === 0) {
      this.#isArcPassed[arc] = 1;
      along.push(k);
      this.#pen.bend(-Math.tan((to[arc] - from[arc]) / 4));
      const next = before[arc];
      if (next < 0) {
        return k;
      }
      this.#drawOnArc(k, from[arc]);
      k = discOf[next];
      arc = next;
    }
    return k;
  }

  #drawOnArc(crossing: number, angle: number): void {
    const { originX, originY } = this.#axis.boundary;
    const [px, py] = onArc(this.#crossings, crossing, angle);
    this.#pen.draw(originX + px, originY + py);
  }

  #drawContact(crossing: number, isRight: boolean): void {
    const { edge, x, y } = this.#crossings;
    const { boundary, edgeLeft, edgeRight, region } = this.#axis;
    const site = isRight ? edgeRight[edge[crossing]] : edgeLeft[edge[crossing]];
    if (site >= boundary.count) {
      const p = site - boundary.count;
      this.#pen.draw(region.coords[2 * p], region.coords[2 * p + 1]);
      return;
    }
    const ax = boundary.x[site];
    const ay = boundary.y[site];
    const s = (x[crossing] - ax) * boundary.tx[site] + (y[crossing] - ay) * boundary.ty[site];
    this.#pen.draw(
      boundary.originX + ax + s * boundary.tx[site],
      boundary.originY + ay + s * boundary.ty[site],
    );
  }
}
