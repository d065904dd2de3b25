import { orient2d } from 'robust-predicates';
import type { VertexIndex } from './vertex-index.ts';

/**
 * Segments of an arrangement. Segment s runs from vertex `lo[s]` to `hi[s]`, `lo` before `hi` in sweep order
 * (by x, then y). Its owners are the drawn edges that lie on it: a list through `ownerNext` from `owners[s]`,
 * each with the drawn edge and how often that edge runs from `lo` to `hi`, less how often it runs back.
 * Segments share lists, so lists never change.
 */
export interface SegmentSet {
  readonly vertices: VertexIndex;
  readonly lo: number[];
  readonly hi: number[];
  readonly owners: number[];
  readonly ownerEdge: number[];
  readonly ownerSign: number[];
  readonly ownerNext: number[];
}

/** A set without segments over the given vertices. */
export function emptySegmentSet(vertices: VertexIndex): SegmentSet {
  return { vertices, lo: [], hi: [], owners: [], ownerEdge: [], ownerSign: [], ownerNext: [] };
}

/** Whether vertex u comes before v in sweep order: smaller x, then smaller y. */
export function isBefore(vertices: VertexIndex, u: number, v: number): boolean {
  const dx = vertices.x[u] - vertices.x[v];
  return dx < 0 || (dx === 0 && vertices.y[u] < vertices.y[v]);
}

/** Orientation of a→b→c with an exact sign: positive where the turn is from +x towards +y. */
export function turn(vertices: VertexIndex, a: number, b: number, c: number): number {
  const { x, y } = vertices;
  return -orient2d(x[a], y[a], x[b], y[b], x[c], y[c]);
}

/** Whether the interior of segment s passes vertex v within the tolerance. */
export function passesNear(set: SegmentSet, s: number, v: number, toleranceMm: number): boolean {
  const { x, y } = set.vertices;
  const a = set.lo[s];
  const b = set.hi[s];
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
  return across * across < toleranceMm * toleranceMm * length2 && along > 0 && along < length2;
}

/**
 * Adds a segment between two different vertices, with the owners of `list` as seen from u to v; its number.
 */
export function addSegment(set: SegmentSet, u: number, v: number, list: number): number {
  const forward = isBefore(set.vertices, u, v);
  set.lo.push(forward ? u : v);
  set.hi.push(forward ? v : u);
  set.owners.push(forward ? list : turnedOwners(set, list));
  return set.lo.length - 1;
}

/** Adds an owner in front of `next` (−1 for none); its number. */
export function addOwner(set: SegmentSet, edge: number, sign: number, next: number): number {
  set.ownerEdge.push(edge);
  set.ownerSign.push(sign);
  set.ownerNext.push(next);
  return set.ownerEdge.length - 1;
}

/**
 * Adds the owners of `list` to those of segment s. Edges of one shape become one owner with the sum of their
 * signs, or none where they cancel: a segment without owners bounds nothing.
 */
export function addOwners(set: SegmentSet, s: number, list: number, shapeOfEdge: Uint32Array): void {
  for (let o = list; o >= 0; o = set.ownerNext[o]) {
    addOwnerTo(set, s, set.ownerEdge[o], set.ownerSign[o], shapeOfEdge);
  }
}

/** Owners looked through for one of the same shape; lists that stay longer only cost time. */
const MAX_COMPARED = 32;

function addOwnerTo(set: SegmentSet, s: number, edge: number, sign: number, shapeOfEdge: Uint32Array): void {
  const passed: number[] = [];
  for (let o = set.owners[s]; o >= 0 && passed.length < MAX_COMPARED; o = set.ownerNext[o]) {
    if (shapeOfEdge[set.ownerEdge[o]] === shapeOfEdge[edge]) {
      const sum = set.ownerSign[o] + sign;
      const rest = set.ownerNext[o];
      let made = sum === 0 ? rest : addOwner(set, set.ownerEdge[o], sum, rest);
      for (const p of passed) {
        made = addOwner(set, set.ownerEdge[p], set.ownerSign[p], made);
      }
      set.owners[s] = made;
      return;
    }
    passed.push(o);
  }
  set.owners[s] = addOwner(set, edge, sign, set.owners[s]);
}

function turnedOwners(set: SegmentSet, list: number): number {
  let turned = -1;
  for (let o = list; o >= 0; o = set.ownerNext[o]) {
    turned = addOwner(set, set.ownerEdge[o], -set.ownerSign[o], turned);
  }
  return turned;
}
