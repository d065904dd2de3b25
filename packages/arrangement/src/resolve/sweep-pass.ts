import { pollStep } from '@pourproof/plane';
import { cutCrossing } from './cut-crossing.ts';
import { isBefore, passesNear, type SegmentSet, turn } from './segment-set.ts';
import { startingInOrder } from './starting-segments.ts';
import { type CrossingSink, cutAhead, type Sweep, startSweep } from './sweep-state.ts';

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
    pollStep();
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
    cutCrossing(sweep, lower, upper);
  } else {
    cutCrossing(sweep, lower, starting[0]);
    cutCrossing(sweep, starting[starting.length - 1], upper);
  }
  for (let k = 0; k < sweep.pending.length && sweep.pairsLeft > 0; k += 2) {
    sweep.pairsLeft--;
    cutCrossing(sweep, sweep.pending[k], sweep.pending[k + 1]);
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
