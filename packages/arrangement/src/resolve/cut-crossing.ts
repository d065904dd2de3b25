import { isBefore, turn } from './segment-set.ts';
import { addEnd, addPiece, cutAhead, type Sweep } from './sweep-state.ts';

/** Cuts neighbours a (below) and b where they cross. */
export function cutCrossing(sweep: Sweep, a: number, b: number): void {
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
