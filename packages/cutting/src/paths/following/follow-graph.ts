import type { MedialAxis } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { OffsetTracer } from '../offset-curves.ts';
import { prunedAxis } from './pruned-axis.ts';

/** A piece of the path: along an axis edge, upwards, or along an offset curve. */
export interface FollowPiece {
  readonly from: number;
  readonly to: number;
  /** Axis edge, or -1 for a piece of an offset curve. */
  readonly edge: number;
  /** `[x, y, bulge, …]` of a piece of an offset curve, relative to the axis' origin. */
  readonly curve: readonly number[];
}

/** All pieces to follow, and the nodes of the axis where a plunge is all there is. */
export interface FollowGraph {
  readonly nodeCount: number;
  readonly pieces: readonly FollowPiece[];
  readonly spots: readonly number[];
}

const NO_CURVE: readonly number[] = [];

/**
 * The pruned axis where its clearance is from `floor` to `cap`, and the offset curves at `cap`. Nodes of the
 * axis keep their numbers; the nodes after them lie on the curves.
 */
export function followGraph(axis: MedialAxis, floor: number, cap: number, ignoreMm: number): FollowGraph {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { isKept, lonely } = prunedAxis(axis, ignoreMm);
  const pieces: FollowPiece[] = [];
  const spots = lonely.filter((v) => nodeR[v] < cap && nodeR[v] >= floor);
  let nodeCount = nodeR.length;
  /** Node, on an offset curve, at which each edge that reaches `cap` ends. */
  const crossingOf = new Map<number, number>();
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    if (isKept[e] === 0 || nodeR[edgeFrom[e]] >= cap || nodeR[edgeTo[e]] < floor) {
      continue;
    }
    const from = nodeR[edgeFrom[e]] < floor ? nodeCount++ : edgeFrom[e];
    let to = edgeTo[e];
    if (nodeR[to] >= cap) {
      to = nodeCount++;
      crossingOf.set(e, to);
    }
    pieces.push({ from, to, edge: e, curve: NO_CURVE });
  }
  if (cap < Infinity) {
    nodeCount = addCurves(axis, cap, crossingOf, nodeCount, pieces);
  }
  return { nodeCount, pieces, spots };
}

/** Adds the offset curves at `cap`, split where edges end on them; returns the new number of nodes. */
function addCurves(
  axis: MedialAxis,
  cap: number,
  crossingOf: ReadonlyMap<number, number>,
  nodeCount: number,
  pieces: FollowPiece[],
): number {
  const tracer = new OffsetTracer(axis, Infinity);
  const all = Int32Array.from(axis.edgeFrom, (_, e) => e);
  const curves = tracer.trace(cap, all, 0);
  const stops = curves.map((): { at: number; node: number }[] => []);
  for (const [e, node] of crossingOf) {
    pollStep();
    // the move along the right wall starts where the edge ends
    const curve = tracer.curveOf[2 * e];
    const count = curves[curve].points.length / 3;
    stops[curve].push({ at: tracer.moveOf[2 * e] % count, node });
  }
  let nodes = nodeCount;
  curves.forEach(({ points }, k) => {
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
        curve: arcBetween(points, at, next.at, list.length > 1),
      });
    });
  });
  return nodes;
}

/** Points of a closed curve from point a to point b; all of it if it has only one stop. */
function arcBetween(points: readonly number[], a: number, b: number, isPart: boolean): number[] {
  const count = points.length / 3;
  const steps = isPart ? (b - a + count) % count : count;
  const out: number[] = [];
  for (let k = 0; k <= steps; k++) {
    pollStep();
    const i = (a + k) % count;
    out.push(points[3 * i], points[3 * i + 1], points[3 * i + 2]);
  }
  return out;
}
