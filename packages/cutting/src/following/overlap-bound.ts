import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { UnionFind } from '@pourproof/plane';

/**
 * Upper bound on what discs of radius `discMm` on the axis share, one at every level crossing, summed over all clearances from that radius up to
 * `mostMm`: ∫ area dR, mm³.
 *
 * At a clearance the discs that stop around a narrow part of m mouths share at most half a disc m − 1 times, and none where no two are near
 * enough. As the clearance passes a node from which u edges rise, the sum of m − 1 over all narrow parts grows by u − 1 at most: by one at a
 * bottleneck, and at a top, where two narrow parts become one, it falls by one. A part of the artwork that is narrow throughout has no mouths.
 * O(n log n).
 */
export function overlapBound(axis: MedialAxis, discMm: number, mostMm: number): number {
  const events = [...mouthEvents(axis), ...nearEvents(axis, discMm)].sort((a, b) => a.at - b.at);
  let mouths = 0;
  let near = 0;
  let area = 0;
  let from = discMm;
  for (const { at, mouths: more, near: nearer } of events) {
    const to = Math.min(at, mostMm);
    if (to > from) {
      area += (to - from) * Math.max(0, Math.min(mouths, near));
      from = to;
    }
    mouths += more;
    near += nearer;
  }
  return (area * Math.PI * discMm * discMm) / 2;
}

/** A clearance at which the number of mouths beyond one, or of pairs of discs that are near, changes. */
interface Event {
  readonly at: number;
  readonly mouths: number;
  readonly near: number;
}

function* mouthEvents(axis: MedialAxis): Iterable<Event> {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const rising = new Int32Array(nodeR.length);
  const isOnAxis = new Uint8Array(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    if (!edge.isSecondary(e)) {
      rising[edgeFrom[e]]++;
      isOnAxis[edgeFrom[e]] = 1;
      isOnAxis[edgeTo[e]] = 1;
    }
  }
  for (let k = 0; k < nodeR.length; k++) {
    if (isOnAxis[k] !== 0 && rising[k] !== 1) {
      yield { at: nodeR[k], mouths: rising[k] - 1, near: 0 };
    }
  }
  for (const widest of widestOfParts(axis)) {
    yield { at: widest, mouths: 1, near: 0 };
  }
}

/** Steps in which the discs on both sides of a bottleneck part, in each of which they count as near as at its beginning. */
const PARTING_STEPS = 8;

/**
 * How much of half a disc the discs on both sides of each bottleneck share at most: the lens of two discs. They are apart by twice the way that the
 * clearance takes to rise, which is least between two vertices, and beyond three times the bottleneck's clearance between an edge and a vertex.
 */
function* nearEvents({ nodeR, bottleneckCount }: MedialAxis, discMm: number): Iterable<Event> {
  for (let k = 0; k < bottleneckCount; k++) {
    const r = nodeR[k];
    const parted = Math.max(Math.hypot(r, discMm) - r, (discMm * discMm) / (4 * r));
    let before = 0;
    for (let step = 0; step <= PARTING_STEPS; step++) {
      // finer at first, where they part fastest
      const rise = parted * (step / PARTING_STEPS) ** 2;
      const way = Math.min(Math.sqrt(rise * (2 * r + rise)), 2 * Math.sqrt(r * rise));
      const near = step < PARTING_STEPS ? Math.min(1, lensShare(way / discMm)) : 0;
      yield { at: r + rise, mouths: 0, near: near - before };
      before = near;
    }
  }
}

/** Area that two discs share whose centres are twice a share of their radius apart, over that of half a disc. */
function lensShare(share: number): number {
  const s = Math.min(1, share);
  return (4 / Math.PI) * (Math.acos(s) - s * Math.sqrt(1 - s * s));
}

/** Greatest clearance of each separate part of the artwork. */
function widestOfParts({ edgeFrom, edgeTo, nodeR }: MedialAxis): readonly number[] {
  const parts = new UnionFind(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    parts.join(edgeFrom[e], edgeTo[e]);
  }
  const widest = new Map<number, number>();
  for (let k = 0; k < nodeR.length; k++) {
    const part = parts.find(k);
    widest.set(part, Math.max(nodeR[k], widest.get(part) ?? 0));
  }
  return [...widest.values()];
}
