import { addOwners, addSegment, isBefore, type SegmentSet, turn } from './segment-set.ts';
import { SweepStatus } from './sweep-status.ts';
import { VertexHeap } from './vertex-heap.ts';

/** Told of each place where the insides of two segments cross: the vertex made there and the owner lists of both. */
export type CrossingSink = (vertex: number, ownersA: number, ownersB: number) => void;

/** What one pass found. */
export interface SweepOutcome {
  /** Whether anything was cut: then another pass must look again. When false, segments meet in common ends only: proven exactly. */
  readonly changed: boolean;
  /** For each segment the one directly below its left end, −1 for none; of use when nothing was changed. */
  readonly below: readonly number[];
}

interface Sweep {
  readonly set: SegmentSet;
  readonly status: SweepStatus;
  readonly heap: VertexHeap;
  readonly toleranceMm: number;
  readonly onCrossing: CrossingSink;
  readonly startHead: number[];
  readonly startNext: number[];
  readonly endHead: number[];
  readonly endSegment: number[];
  readonly endNext: number[];
  readonly below: number[];
  /** Pairs (segment, vertex) of cuts that lie behind the sweep line: made after the pass. */
  readonly deferred: number[];
  current: number;
  lower: number;
  upper: number;
  changed: boolean;
}

/**
 * Sweeps a vertical line over all segments once, cuts segments where they cross, touch or overlap, and merges equal ones.
 *
 * Neighbours on the line are compared with exact predicates. A crossing gets a rounded place, which bends its segments by a rounding;
 * so after a pass that cut something the segments are swept again, until a pass finds nothing. By the argument of Shamos and Hoey (1976)
 * that pass proves that no two segments meet but in common ends. A vertex nearer to a segment than the tolerance counts as on it.
 *
 * @param order all vertices in sweep order
 */
export function sweepPass(
  set: SegmentSet,
  order: Uint32Array,
  toleranceMm: number,
  onCrossing: CrossingSink,
): SweepOutcome {
  const sweep = startSweep(set, toleranceMm, onCrossing);
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
  for (let k = 0; k < sweep.deferred.length; k += 2) {
    cutBehind(set, sweep.deferred[k], sweep.deferred[k + 1]);
  }
  return { changed: sweep.changed, below: sweep.below };
}

function startSweep(set: SegmentSet, toleranceMm: number, onCrossing: CrossingSink): Sweep {
  const vertexCount = set.vertices.x.length;
  const sweep: Sweep = {
    set,
    status: new SweepStatus(),
    heap: new VertexHeap(set.vertices),
    toleranceMm,
    onCrossing,
    startHead: new Array<number>(vertexCount).fill(-1),
    startNext: [],
    endHead: new Array<number>(vertexCount).fill(-1),
    endSegment: [],
    endNext: [],
    below: [],
    deferred: [],
    current: -1,
    lower: -1,
    upper: -1,
    changed: false,
  };
  for (let s = 0; s < set.lo.length; s++) {
    sweep.status.addSlot();
    sweep.startNext.push(-1);
    sweep.below.push(-1);
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
}

/** Takes the segments that end here off the line and leaves the gap around the vertex in `lower` and `upper`. */
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

/** Cuts the segments next to the gap that pass through the vertex or nearer to it than the tolerance. */
function cutNear(sweep: Sweep, v: number): void {
  const { status } = sweep;
  while (sweep.lower >= 0 && isNear(sweep, sweep.lower, v)) {
    const s = sweep.lower;
    sweep.lower = status.below[s];
    status.remove(s);
    cutAhead(sweep, s, v);
  }
  while (sweep.upper >= 0 && isNear(sweep, sweep.upper, v)) {
    const s = sweep.upper;
    sweep.upper = status.above[s];
    status.remove(s);
    cutAhead(sweep, s, v);
  }
}

function isNear(sweep: Sweep, s: number, v: number): boolean {
  const { x, y } = sweep.set.vertices;
  const a = sweep.set.lo[s];
  const b = sweep.set.hi[s];
  if (a === v || b === v) {
    return false;
  }
  const dx = x[b] - x[a];
  const dy = y[b] - y[a];
  const px = x[v] - x[a];
  const py = y[v] - y[a];
  const length2 = dx * dx + dy * dy;
  const along = px * dx + py * dy;
  const across = px * dy - py * dx;
  return across * across < sweep.toleranceMm * sweep.toleranceMm * length2 && along > 0 && along < length2;
}

/** The segments that start here from small y to large; overlapping ones are cut at the shorter's end and merged. */
function startingInOrder(sweep: Sweep, v: number): number[] {
  const { set } = sweep;
  const list: number[] = [];
  for (let s = sweep.startHead[v]; s >= 0; s = sweep.startNext[s]) {
    if (set.owners[s] >= 0) {
      list.push(s);
    }
  }
  if (list.length < 2) {
    return list;
  }
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
  return kept;
}

function mergeOverlap(sweep: Sweep, a: number, b: number): number {
  const { set } = sweep;
  if (set.hi[a] === set.hi[b]) {
    addOwners(set, a, set.owners[b]);
    set.owners[b] = -1;
    return a;
  }
  const [short, long] = isBefore(set.vertices, set.hi[a], set.hi[b]) ? [a, b] : [b, a];
  addOwners(set, short, set.owners[long]);
  set.lo[long] = set.hi[short];
  addStart(sweep, long);
  sweep.changed = true;
  return short;
}

/** Cuts neighbours a (below) and b where they cross ahead. */
function meet(sweep: Sweep, a: number, b: number): void {
  if (a < 0 || b < 0) {
    return;
  }
  const { set } = sweep;
  const { vertices, lo, hi, owners } = set;
  const { x, y } = vertices;
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
  const t = fromB / (fromB - toB);
  const known = x.length;
  const v = vertices.findOrAdd(x[lo[a]] + t * (x[hi[a]] - x[lo[a]]), y[lo[a]] + t * (y[hi[a]] - y[lo[a]]));
  if (v === known) {
    sweep.startHead.push(-1);
    sweep.endHead.push(-1);
    if (isBefore(vertices, sweep.current, v)) {
      sweep.heap.push(v);
    }
  }
  sweep.onCrossing(v, owners[a], owners[b]);
  cut(sweep, a, v);
  cut(sweep, b, v);
}

function areOpposite(a: number, b: number): boolean {
  return (a < 0 && b > 0) || (a > 0 && b < 0);
}

function cut(sweep: Sweep, s: number, v: number): void {
  const { set } = sweep;
  if (v === set.lo[s] || v === set.hi[s]) {
    return;
  }
  if (isBefore(set.vertices, sweep.current, v) && isBefore(set.vertices, v, set.hi[s])) {
    cutAhead(sweep, s, v);
    addEnd(sweep, s);
  } else {
    sweep.changed = true;
    sweep.deferred.push(s, v);
  }
}

/** Ends s at v and lets the rest of it start there. */
function cutAhead(sweep: Sweep, s: number, v: number): void {
  const { set } = sweep;
  const rest = addSegment(set, v, set.hi[s], set.owners[s]);
  set.hi[s] = v;
  sweep.status.addSlot();
  sweep.startNext.push(-1);
  sweep.below.push(-1);
  addStart(sweep, rest);
  addEnd(sweep, rest);
  sweep.changed = true;
}

function cutBehind(set: SegmentSet, s: number, v: number): void {
  const list = set.owners[s];
  if (list < 0 || v === set.lo[s] || v === set.hi[s]) {
    return;
  }
  addSegment(set, set.lo[s], v, list);
  addSegment(set, v, set.hi[s], list);
  set.owners[s] = -1;
}
