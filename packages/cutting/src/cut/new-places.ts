import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { type Point, UnionFind } from '@pourproof/plane';
import { UNSEEN_REACH_MM } from '../tolerances.ts';

/**
 * For each connected piece of the axis that a disc of radius `radiusMm` reaches and one of `beforeMm` does
 * not, its point of greatest clearance, absolute. Pieces that gain at most {@link UNSEEN_REACH_MM} are left
 * out. With `beforeMm` Infinity: for each connected part that the disc reaches.
 */
export function newPlaces(axis: MedialAxis, radiusMm: number, beforeMm: number): readonly Point[] {
  const { edgeFrom, edgeTo, nodeX, nodeY, nodeR, boundary } = axis;
  const edge = new AxisEdge(axis);
  const parts = new Parts(nodeR.length + edgeFrom.length);
  const isNew = (node: number): boolean => nodeR[node] >= radiusMm && nodeR[node] < beforeMm;
  for (let e = 0; e < edgeFrom.length; e++) {
    const [from, to] = [edgeFrom[e], edgeTo[e]];
    if (nodeR[to] < radiusMm || nodeR[from] >= beforeMm || edge.isSecondary(e)) {
      continue;
    }
    edge.load(e);
    const low = Math.max(edge.r0, radiusMm);
    const high = Math.min(edge.r1, beforeMm);
    const own = nodeR.length + e;
    edge.atHigh(high);
    const top = isNew(to) ? { x: nodeX[to], y: nodeY[to] } : { x: edge.x, y: edge.y };
    parts.add(own, { length: edge.length(low, high), low, high, ...top });
    for (const node of [from, to]) {
      if (isNew(node)) {
        parts.join(own, node);
      }
    }
  }
  return parts
    .found()
    .filter((part) => beforeMm === Infinity || part.length - (part.high - part.low) > UNSEEN_REACH_MM)
    .map((part) => [boundary.originX + part.x, boundary.originY + part.y]);
}

interface Part {
  readonly length: number;
  readonly low: number;
  readonly high: number;
  readonly x: number;
  readonly y: number;
}

/** Connected pieces of the axis. */
class Parts {
  readonly #joined: UnionFind;
  readonly #own: [number, Part][] = [];

  constructor(count: number) {
    this.#joined = new UnionFind(count);
  }

  add(id: number, part: Part): void {
    this.#own.push([id, part]);
  }

  join(a: number, b: number): void {
    this.#joined.join(a, b);
  }

  found(): Part[] {
    const sums = new Map<number, Part>();
    for (const [id, part] of this.#own) {
      const root = this.#joined.find(id);
      const sum = sums.get(root);
      const best = sum === undefined || part.high > sum.high ? part : sum;
      sums.set(root, {
        ...best,
        length: part.length + (sum?.length ?? 0),
        low: Math.min(part.low, sum?.low ?? Infinity),
      });
    }
    return [...sums.values()];
  }
}
