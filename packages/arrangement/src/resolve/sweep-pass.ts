import { addOwners, addSegment, isBefore, passesNear, type SegmentSet, turn } from './segment-set.ts';
import { SweepStatus } from './sweep-status.ts';
import { VertexHeap } from './vertex-heap.ts';

/**
 * Called for each point where the interiors of two segments cross, with the vertex there and the owner lists
 * of both; −1 for the second list where one segment passes a vertex.
 */
export type CrossingSink = (vertex: number, ownersA: number, ownersB: number) => void;

/** What one pass found. */
export interface SweepOutcome {
  /**
   * Whether anything was cut, so that another pass is needed. If false, it is proven that segments meet in
   * common ends only.
   */
  readonly changed: boolean;
  /** For each segment the one directly below its left end, −1 for none; valid if nothing was cut. */
  readonly below: readonly number[];
}

/**
 * Pairs of new neighbours that a pass compares again, per segment and at least; the rest is left to the next
 * pass. One vertex may need very many: an edge that is vertical except for rounding crosses all others behind
 * its upper end.
 */
const MAX_RECHECKS_PER_SEGMENT = 2;
const MIN_RECHECKS = 128;

interface Sweep {
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

/**
 * Sweeps a vertical line over all segments once, cuts segments where they cross, touch or overlap, and merges
 * equal ones.
 *
 * Neighbours on the line are compared by exact predicates. A crossing is rounded, which bends its segments;
 * so segments are swept again until a pass cuts nothing. By the argument of Shamos and Hoey (1976) that pass
 * proves that segments meet in common ends only. A vertex within the tolerance of a segment counts as on it.
 *
 * @param order all vertices in sweep order
 */
export function sweepPass(
  set: SegmentSet,
  order: Uint32Array,
  shapeOfEdge: Uint32Array,
  toleranceMm: number,
  onCrossing: CrossingSink,
): SweepOutcome {
  const sweep = startSweep(set, shapeOfEdge, toleranceMm, onCrossing);
  const { heap } = sweep;
  let next = 0;
  for (;;) {
    const made = heap.first();
    if (next < order.length && (made < 0 || isBefore(set.vertices, order[next], made))) {
      visitVertex(sweep, order[next++]);
    } else if (made >= 0) {
      heap.pop();
      visitVertex(sweep, made);
    } else {
      break;
    }
  }
  return { changed: sweep.changed, below: sweep.below };
}

function startSweep(
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
    sweep.status.addSlot();
    if (set.owners[s] >= 0) {
      addStart(sweep, s);
      addEnd(sweep, s);
    }
  }
  return sweep;
}

function addStart(sweep: Sweep, s: number): void {
  const v = sweep.set.lo[s];
  sweep.startNext[s] = sweep.startHead[v];
  sweep.startHead[v] = s;
}

function addEnd(sweep: Sweep, s: number): void {
  const v = sweep.set.hi[s];
  sweep.endSegment.push(s);
  sweep.endNext.push(sweep.endHead[v]);
  sweep.endHead[v] = sweep.endSegment.length - 1;
}

function visitVertex(sweep: Sweep, v: number): void {
  sweep.current = v;
  removeEnding(sweep, v);
  cutNear(sweep, v);
  const starting = startingInOrder(sweep, v);
  const { status, lower, upper } = sweep;
  let under = lower;
  for (const s of starting) {
    status.insertAbove(under, s);
    under = s;
  }
  for (const s of starting) {
    sweep.below[s] = status.below[s];
  }
  if (starting.length === 0) {
    meet(sweep, lower, upper);
  } else {
    meet(sweep, lower, starting[0]);
    meet(sweep, starting[starting.length - 1], upper);
  }
  for (let k = 0; k < sweep.pending.length && sweep.pairsLeft > 0; k += 2) {
    sweep.pairsLeft--;
    meet(sweep, sweep.pending[k], sweep.pending[k + 1]);
  }
  sweep.pending.length = 0;
}

/** Removes the segments that end here and sets `lower` and `upper` to the neighbours of the vertex. */
function removeEnding(sweep: Sweep, v: number): void {
  const { status, set } = sweep;
  let found = false;
  for (let e = sweep.endHead[v]; e >= 0; e = sweep.endNext[e]) {
    const s = sweep.endSegment[e];
    if (set.hi[s] === v && status.has(s)) {
      sweep.lower = status.below[s];
      sweep.upper = status.above[s];
      status.remove(s);
      found = true;
    }
  }
  if (!found && sweep.startHead[v] >= 0) {
    sweep.lower = status.lastUnder((s) => turn(set.vertices, set.lo[s], set.hi[s], v) > 0);
    sweep.upper = sweep.lower < 0 ? status.lowest() : status.above[sweep.lower];
  } else if (!found) {
    sweep.lower = -1;
    sweep.upper = -1;
  }
}

/** Cuts the neighbours that pass the vertex within the tolerance. */
function cutNear(sweep: Sweep, v: number): void {
  const { status } = sweep;
  while (sweep.lower >= 0 && passesNear(sweep.set, sweep.lower, v, sweep.toleranceMm)) {
    const s = sweep.lower;
    sweep.lower = status.below[s];
    cutThrough(sweep, s, v);
  }
  while (sweep.upper >= 0 && passesNear(sweep.set, sweep.upper, v, sweep.toleranceMm)) {
    const s = sweep.upper;
    sweep.upper = status.above[s];
    cutThrough(sweep, s, v);
  }
}

function cutThrough(sweep: Sweep, s: number, v: number): void {
  sweep.onCrossing(v, sweep.set.owners[s], -1);
  sweep.status.remove(s);
  cutAhead(sweep, s, v);
}

/**
 * The segments that start here, by rising y; overlapping ones are cut at the shorter one's end and merged.
 */
function startingInOrder(sweep: Sweep, v: number): number[] {
  const { set } = sweep;
  const list: number[] = [];
  for (let s = sweep.startHead[v]; s >= 0; s = sweep.startNext[s]) {
    if (set.owners[s] >= 0) {
      list.push(s);
    }
  }
  if (list.length === 2) {
    // the commonest case, two edges at a corner or crossing, needs no sort
    const side = turn(set.vertices, v, set.hi[list[0]], set.hi[list[1]]);
    if (side !== 0) {
      return side > 0 ? list : [list[1], list[0]];
    }
  }
  return list.length < 2 ? list : inAngularOrder(sweep, v, list);
}

function inAngularOrder(sweep: Sweep, v: number, list: number[]): number[] {
  const { set } = sweep;
  list.sort((a, b) => -turn(set.vertices, v, set.hi[a], set.hi[b]));
  const kept: number[] = [];
  for (const s of list) {
    const last = kept.length === 0 ? -1 : kept[kept.length - 1];
    if (last < 0 || turn(set.vertices, v, set.hi[last], set.hi[s]) !== 0) {
      kept.push(s);
      continue;
    }
    kept[kept.length - 1] = mergeOverlap(sweep, last, s);
  }
  return kept.filter((s) => set.owners[s] >= 0);
}

function mergeOverlap(sweep: Sweep, a: number, b: number): number {
  const { set } = sweep;
  if (set.hi[a] === set.hi[b]) {
    addOwners(set, a, set.owners[b], sweep.shapeOfEdge);
    set.owners[b] = -1;
    return a;
  }
  const [short, long] = isBefore(set.vertices, set.hi[a], set.hi[b]) ? [a, b] : [b, a];
  addOwners(set, short, set.owners[long], sweep.shapeOfEdge);
  set.lo[long] = set.hi[short];
  addStart(sweep, long);
  sweep.changed = true;
  return short;
}

/** Cuts neighbours a (below) and b where they cross. */
function meet(sweep: Sweep, a: number, b: number): void {
  if (a < 0 || b < 0 || !sweep.status.has(a) || sweep.status.above[a] !== b) {
    return;
  }
  const { set } = sweep;
  const { vertices, lo, hi } = set;
  const { y } = vertices;
  if (Math.max(y[lo[a]], y[hi[a]]) < Math.min(y[lo[b]], y[hi[b]])) {
    return;
  }
  const fromB = turn(vertices, lo[b], hi[b], lo[a]);
  const toB = turn(vertices, lo[b], hi[b], hi[a]);
  if (!areOpposite(fromB, toB)) {
    return;
  }
  if (!areOpposite(turn(vertices, lo[a], hi[a], lo[b]), turn(vertices, lo[a], hi[a], hi[b]))) {
    return;
  }
  const v = crossingVertex(sweep, a, b, fromB / (fromB - toB));
  sweep.changed = true;
  sweep.onCrossing(v, set.owners[a], set.owners[b]);
  if (isBefore(vertices, sweep.current, v)) {
    cut(sweep, a, v);
    cut(sweep, b, v);
  } else {
    crossBehind(sweep, a, b, v);
  }
}

function areOpposite(a: number, b: number): boolean {
  return (a < 0 && b > 0) || (a > 0 && b < 0);
}

/**
 * The vertex where a and b cross, at share t of a: a known vertex if one is near, else a new one. On a
 * vertical or horizontal edge it has exactly that edge's x or y.
 */
function crossingVertex(sweep: Sweep, a: number, b: number, t: number): number {
  const { vertices, lo, hi } = sweep.set;
  const { x, y } = vertices;
  const px = x[lo[b]] === x[hi[b]] ? x[lo[b]] : x[lo[a]] + t * (x[hi[a]] - x[lo[a]]);
  const py = y[lo[b]] === y[hi[b]] ? y[lo[b]] : y[lo[a]] + t * (y[hi[a]] - y[lo[a]]);
  const known = x.length;
  const v = vertices.findOrAdd(px, py);
  if (v === known) {
    sweep.startHead.push(-1);
    sweep.endHead.push(-1);
    if (isBefore(vertices, sweep.current, v)) {
      sweep.heap.push(v);
    }
  }
  for (const s of [a, b]) {
    for (const end of [lo[s], hi[s]]) {
      // a known vertex just beyond an end would fold the segment and could be chosen again in every pass
      if (isBeyond(sweep, s, v) && Math.hypot(x[end] - px, y[end] - py) < 2 * sweep.toleranceMm) {
        return end;
      }
    }
  }
  return v;
}

function isBeyond(sweep: Sweep, s: number, v: number): boolean {
  const { vertices, lo, hi } = sweep.set;
  return isBefore(vertices, v, lo[s]) || isBefore(vertices, hi[s], v);
}

/** Cuts s at a vertex ahead of the sweep line. */
function cut(sweep: Sweep, s: number, v: number): void {
  const { set } = sweep;
  const end = set.hi[s];
  if (v === set.lo[s] || v === end) {
    return;
  }
  if (isBefore(set.vertices, v, end)) {
    cutAhead(sweep, s, v);
    addEnd(sweep, s);
  } else {
    // a nearly vertical segment whose crossing was rounded to just beyond its end
    set.hi[s] = v;
    addEnd(sweep, s);
    addPiece(sweep, v, end, set.owners[s]);
  }
}

/**
 * Cuts neighbours a and b at a vertex behind the sweep line, where rounding or a known vertex put the
 * crossing: the rest of both has crossed already, so they swap places. The pieces behind the line are left to
 * the next pass.
 */
function crossBehind(sweep: Sweep, a: number, b: number, v: number): void {
  const { status } = sweep;
  let lower = status.below[a];
  status.remove(a);
  status.remove(b);
  for (const s of [b, a]) {
    const rest = restAfter(sweep, s, v);
    if (rest >= 0) {
      status.insertAbove(lower, rest);
      sweep.pending.push(lower, rest);
      lower = rest;
    }
  }
  if (lower >= 0) {
    sweep.pending.push(lower, status.above[lower]);
  }
}

function restAfter(sweep: Sweep, s: number, v: number): number {
  const { set } = sweep;
  if (v === set.lo[s]) {
    return s;
  }
  if (v === set.hi[s]) {
    return -1;
  }
  const list = set.owners[s];
  const [lo, hi] = [set.lo[s], set.hi[s]];
  addPiece(sweep, lo, v, list);
  set.owners[s] = -1;
  return addPiece(sweep, v, hi, list);
}

/**
 * Adds a segment between two vertices to the lists of both; it starts only if the line has not passed its
 * left end.
 */
function addPiece(sweep: Sweep, u: number, v: number, list: number): number {
  const s = addSegment(sweep.set, u, v, list);
  sweep.status.addSlot();
  sweep.startNext.push(-1);
  sweep.below.push(-1);
  addStart(sweep, s);
  addEnd(sweep, s);
  return s;
}

/** Ends s at v and starts the rest of it there. */
function cutAhead(sweep: Sweep, s: number, v: number): void {
  const { set } = sweep;
  addPiece(sweep, v, set.hi[s], set.owners[s]);
  set.hi[s] = v;
  sweep.changed = true;
}
