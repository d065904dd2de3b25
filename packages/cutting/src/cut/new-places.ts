import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { type Point, pollStep, UnionFind } from '@pourproof/plane';
import { UNSEEN_REACH_MM } from '../tolerances.ts';

/**
 * For each connected piece of the axis that a disc of radius `radiusMm` reaches and one of `beforeMm` does
 * not, its point of greatest clearance, absolute. Pieces that gain at most {@link UNSEEN_REACH_MM} are left
 * out. With `beforeMm` Infinity: for each connected part that the disc reaches.
 */
export function newPlaces(axis: MedialAxis, radiusMm: number, beforeMm: number): readonly Point[] {
  const { edgeFrom, edgeTo, nodeX, nodeY, nodeR, boundary } = axis;
  const nodes = nodeR.length;
  const edge = new AxisEdge(axis);
  const joined = new UnionFind(nodes + edgeFrom.length);
  const reached: number[] = [];
  const isNew = (node: number): boolean => nodeR[node] >= radiusMm && nodeR[node] < beforeMm;
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const [from, to] = [edgeFrom[e], edgeTo[e]];
    if (nodeR[to] < radiusMm || nodeR[from] >= beforeMm || edge.isSecondary(e)) {
      continue;
    }
    reached.push(e);
    if (isNew(from)) {
      joined.join(nodes + e, from);
    }
    if (isNew(to)) {
      joined.join(nodes + e, to);
    }
  }
  const places: Place[] = [];
  const placeOf = new Int32Array(nodes + edgeFrom.length).fill(-1);
  for (const e of reached) {
    pollStep();
    edge.load(e);
    const low = Math.max(edge.r0, radiusMm);
    const high = Math.min(edge.r1, beforeMm);
    const root = joined.find(nodes + e);
    if (placeOf[root] < 0) {
      placeOf[root] = places.length;
      places.push({ length: 0, low: Infinity, high: -Infinity, x: 0, y: 0 });
    }
    const place = places[placeOf[root]];
    place.length += edge.length(low, high);
    place.low = Math.min(place.low, low);
    if (high > place.high) {
      place.high = high;
      const to = edgeTo[e];
      edge.atHigh(high);
      place.x = isNew(to) ? nodeX[to] : edge.x;
      place.y = isNew(to) ? nodeY[to] : edge.y;
    }
  }
  return places
    .filter(({ length, low, high }) => beforeMm === Infinity || length - (high - low) > UNSEEN_REACH_MM)
    .map(({ x, y }) => [boundary.originX + x, boundary.originY + y]);
}

/** A connected piece of the axis: its length, its least and greatest clearance, and the place of that. */
interface Place {
  length: number;
  low: number;
  high: number;
  x: number;
  y: number;
}
