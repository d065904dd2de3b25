import { addOwners, isBefore, type SegmentSet, turn } from './segment-set.ts';
import { addStart, type Sweep } from './sweep-state.ts';

/**
 * The segments that start here, by rising y; overlapping ones are cut at the shorter one's end and merged.
 */
export function startingInOrder(sweep: Sweep, v: number): number[] {
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
  sortByAngle(set, v, list);
  const kept: number[] = [];
  for (const s of list) {
    const last = kept.length === 0 ? -1 : kept[kept.length - 1];
    if (last < 0 || turn(set.vertices, v, set.hi[last], set.hi[s]) !== 0) {
      kept.push(s);
      continue;
    }
    kept[kept.length - 1] = mergeOverlap(sweep, last, s);
  }
  return kept.every((s) => set.owners[s] >= 0) ? kept : kept.filter((s) => set.owners[s] >= 0);
}

/** Up to so many segments at a vertex are sorted one by one (our choice): few ever meet, and a library's sort makes copies each time. */
const FEW = 16;

function sortByAngle({ vertices, hi }: SegmentSet, v: number, list: number[]): void {
  if (list.length > FEW) {
    list.sort((a, b) => -turn(vertices, v, hi[a], hi[b]));
    return;
  }
  for (let k = 1; k < list.length; k++) {
    const s = list[k];
    let at = k;
    while (at > 0 && turn(vertices, v, hi[list[at - 1]], hi[s]) < 0) {
      list[at] = list[at - 1];
      at--;
    }
    list[at] = s;
  }
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
