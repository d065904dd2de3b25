import type { MedialAxis } from '@pourproof/geometry';
import { keptAxis } from './kept-axis.ts';
import { StrandTracer } from './offset-strands.ts';

/** A piece of the way: along an axis edge from its low end up, or along a ring of equal clearance. */
export interface FollowPiece {
  readonly from: number;
  readonly to: number;
  /** Axis edge, or -1 for a piece of ring. */
  readonly edge: number;
  /** `[x, y, bulge, …]` of a piece of ring, relative to the axis' origin. */
  readonly ring: readonly number[];
}

/** All pieces to follow, and the nodes of the axis where a single plunge is all. */
export interface FollowGraph {
  readonly nodeCount: number;
  readonly pieces: readonly FollowPiece[];
  readonly spots: readonly number[];
}

const NO_RING: readonly number[] = [];

/**
 * The axis where its clearance is from `floor` to `cap`, without branches that change less than `ignoreMm`, and the curves of clearance `cap`. Nodes of
 * the axis keep their numbers; those after them are points of the curves.
 */
export function followGraph(axis: MedialAxis, floor: number, cap: number, ignoreMm: number): FollowGraph {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { isKept, lonely } = keptAxis(axis, ignoreMm);
  const pieces: FollowPiece[] = [];
  const spots = lonely.filter((v) => nodeR[v] < cap && nodeR[v] >= floor);
  let nodeCount = nodeR.length;
  /** Node on the curve at which each kept edge ends that reaches it. */
  const mouthOf = new Map<number, number>();
  for (let e = 0; e < edgeFrom.length; e++) {
    if (isKept[e] === 0 || nodeR[edgeFrom[e]] >= cap || nodeR[edgeTo[e]] < floor) {
      continue;
    }
    const from = nodeR[edgeFrom[e]] < floor ? nodeCount++ : edgeFrom[e];
    let to = edgeTo[e];
    if (nodeR[to] >= cap) {
      to = nodeCount++;
      mouthOf.set(e, to);
    }
    pieces.push({ from, to, edge: e, ring: NO_RING });
  }
  if (cap < Infinity) {
    nodeCount = addRings(axis, cap, mouthOf, nodeCount, pieces);
  }
  return { nodeCount, pieces, spots };
}

/** Adds the curves of clearance `cap`, cut where kept edges end on them; returns the new number of nodes. */
function addRings(
  axis: MedialAxis,
  cap: number,
  mouthOf: ReadonlyMap<number, number>,
  nodeCount: number,
  pieces: FollowPiece[],
): number {
  const tracer = new StrandTracer(axis, Infinity);
  const all = Int32Array.from(axis.edgeFrom, (_, e) => e);
  const strands = tracer.trace(cap, all, 0);
  const stops = strands.map((): { at: number; node: number }[] => []);
  for (const [e, node] of mouthOf) {
    // the move along the right wall starts where the edge ends
    const strand = tracer.strandOf[2 * e];
    const count = strands[strand].points.length / 3;
    stops[strand].push({ at: tracer.moveOf[2 * e] % count, node });
  }
  let nodes = nodeCount;
  strands.forEach(({ points }, k) => {
    const list = stops[k].sort((a, b) => a.at - b.at);
    if (list.length === 0) {
      list.push({ at: 0, node: nodes++ });
    }
    list.forEach(({ at, node }, i) => {
      const next = list[(i + 1) % list.length];
      pieces.push({
        from: node,
        to: next.node,
        edge: -1,
        ring: arcBetween(points, at, next.at, list.length > 1),
      });
    });
  });
  return nodes;
}

/** Points of a ring from point a to point b; all round if they are the same and the ring has but one stop. */
function arcBetween(points: readonly number[], a: number, b: number, isPart: boolean): number[] {
  const count = points.length / 3;
  const steps = isPart ? (b - a + count) % count : count;
  const out: number[] = [];
  for (let k = 0; k <= steps; k++) {
    const i = (a + k) % count;
    out.push(points[3 * i], points[3 * i + 1], points[3 * i + 2]);
  }
  return out;
}
