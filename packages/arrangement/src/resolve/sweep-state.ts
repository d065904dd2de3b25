import { pollStep } from '@pourproof/plane';
import { addSegment, type SegmentSet } from './segment-set.ts';
import { SweepStatus } from './sweep-status.ts';
import { VertexHeap } from './vertex-heap.ts';

/**
 * Called for each point where the interiors of two segments cross, with the vertex there and the owner lists
 * of both; −1 for the second list where one segment passes a vertex.
 */
export type CrossingSink = (vertex: number, ownersA: number, ownersB: number) => void;

/**
 * Pairs of new neighbours that a pass compares again, per segment and at least; the rest is left to the next
 * pass. One vertex may need very many: an edge that is vertical except for rounding crosses all others behind
 * its upper end.
 */
const MAX_RECHECKS_PER_SEGMENT = 2;
const MIN_RECHECKS = 128;

/** A pass under way. */
export interface Sweep {
  readonly set: SegmentSet;
  readonly status: SweepStatus;
  readonly heap: VertexHeap;
  readonly shapeOfEdge: Uint32Array;
  readonly toleranceMm: number;
  readonly onCrossing: CrossingSink;
  readonly startHead: number[];
  readonly startNext: number[];
  readonly endHead: number[];
  readonly endSegment: number[];
  readonly endNext: number[];
  readonly below: number[];
  /** Pairs of new neighbours that are still to be compared. */
  readonly pending: number[];
  /** How many such pairs this pass may still compare. */
  pairsLeft: number;
  current: number;
  lower: number;
  upper: number;
  changed: boolean;
}

/** A pass over a set of segments that has not begun to move. */
export function startSweep(
  set: SegmentSet,
  shapeOfEdge: Uint32Array,
  toleranceMm: number,
  onCrossing: CrossingSink,
): Sweep {
  const vertexCount = set.vertices.x.length;
  const sweep: Sweep = {
    set,
    status: new SweepStatus(set.lo.length),
    heap: new VertexHeap(set.vertices),
    shapeOfEdge,
    toleranceMm,
    onCrossing,
    startHead: new Array<number>(vertexCount).fill(-1),
    startNext: new Array<number>(set.lo.length).fill(-1),
    endHead: new Array<number>(vertexCount).fill(-1),
    endSegment: [],
    endNext: [],
    below: new Array<number>(set.lo.length).fill(-1),
    pending: [],
    pairsLeft: MIN_RECHECKS + MAX_RECHECKS_PER_SEGMENT * set.lo.length,
    current: -1,
    lower: -1,
    upper: -1,
    changed: false,
  };
  for (let s = 0; s < set.lo.length; s++) {
    pollStep();
    sweep.status.addSlot();
    if (set.owners[s] >= 0) {
      addStart(sweep, s);
      addEnd(sweep, s);
    }
  }
  return sweep;
}

/** Lets segment s start at its left end. */
export function addStart(sweep: Sweep, s: number): void {
  const v = sweep.set.lo[s];
  sweep.startNext[s] = sweep.startHead[v];
  sweep.startHead[v] = s;
}

/** Lets segment s end at its right end. */
export function addEnd(sweep: Sweep, s: number): void {
  const v = sweep.set.hi[s];
  sweep.endSegment.push(s);
  sweep.endNext.push(sweep.endHead[v]);
  sweep.endHead[v] = sweep.endSegment.length - 1;
}

/**
 * Adds a segment between two vertices to the lists of both; it starts only if the line has not passed its
 * left end.
 */
export function addPiece(sweep: Sweep, u: number, v: number, list: number): number {
  const s = addSegment(sweep.set, u, v, list);
  sweep.status.addSlot();
  sweep.startNext.push(-1);
  sweep.below.push(-1);
  addStart(sweep, s);
  addEnd(sweep, s);
  return s;
}

/** Ends s at v and starts the rest of it there. */
export function cutAhead(sweep: Sweep, s: number, v: number): void {
  const { set } = sweep;
  addPiece(sweep, v, set.hi[s], set.owners[s]);
  set.hi[s] = v;
  sweep.changed = true;
}
