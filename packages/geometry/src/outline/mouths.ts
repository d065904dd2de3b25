import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/**
 * The places where the clearance passes the cutter's radius: there the cutter, coming from where it fits, stops. Mouth k lies on axis edge
 * `edge[k]` at `(x[k], y[k])`, relative to the axis' origin; the cutter touches the left wall in direction `angle[k]` and leaves the arc of
 * `sweep[k]` radians from there to the right wall, turning from +x to +y.
 */
export interface Mouths {
  readonly radius: number;
  readonly edge: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly angle: readonly number[];
  readonly sweep: readonly number[];
  /** Mouth on each axis edge, -1 for none. */
  readonly ofEdge: Int32Array;
  /** For each node with less clearance than the radius, some node that stands for all that hang together with it. */
  readonly component: Int32Array;
  /** Component that each mouth closes. */
  readonly closes: readonly number[];
}

/**
 * All mouths of the axis at a radius, mm; those of single corners can be left out, which close nothing but their own corner. Linear time.
 */
export function findMouths(axis: MedialAxis, radius: number, isWithCorners: boolean = true): Mouths {
  const { edgeFrom, edgeTo, nodeR, boundary } = axis;
  const shape = new AxisEdge(axis);
  const component = joinBelow(axis, radius);
  const ofEdge = new Int32Array(edgeFrom.length).fill(-1);
  const edge: number[] = [];
  const x: number[] = [];
  const y: number[] = [];
  const angle: number[] = [];
  const sweep: number[] = [];
  const closes: number[] = [];
  for (let e = 0; e < edgeFrom.length; e++) {
    if (nodeR[edgeFrom[e]] >= radius || nodeR[edgeTo[e]] < radius || shape.isSpoke(e)) {
      continue;
    }
    if (!isWithCorners && isCornerBranch(axis, e)) {
      continue;
    }
    shape.load(e);
    shape.at(radius);
    const [ax, ay] = contactDirection(boundary, shape.left, shape.x, shape.y);
    ofEdge[e] = edge.length;
    edge.push(e);
    x.push(shape.x);
    y.push(shape.y);
    angle.push(Math.atan2(ay, ax));
    sweep.push(sweepAt(boundary, shape));
    closes.push(component[edgeFrom[e]]);
  }
  return { radius, edge, x, y, angle, sweep, ofEdge, component, closes };
}

/** Whether axis edge e starts in a convex corner of the boundary. */
export function isCornerBranch(axis: MedialAxis, e: number): boolean {
  const { edgeFrom, edgeLeft, edgeRight, nodeR, boundary } = axis;
  return nodeR[edgeFrom[e]] === 0 && edgeLeft[e] < boundary.count && edgeRight[e] < boundary.count;
}

/** Turn in radians, 0 … π, between the directions to both contacts at the point where `edge` was last asked. */
export function sweepAt(boundary: MedialAxis['boundary'], edge: AxisEdge): number {
  const [ax, ay] = contactDirection(boundary, edge.left, edge.x, edge.y);
  const [bx, by] = contactDirection(boundary, edge.right, edge.x, edge.y);
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}

/** Unit direction from a point of the axis to its contact with a site. */
function contactDirection(
  boundary: MedialAxis['boundary'],
  site: number,
  px: number,
  py: number,
): [number, number] {
  const { count, x, y, tx, ty } = boundary;
  if (site < count) {
    return [ty[site], -tx[site]];
  }
  const dx = x[site - count] - px;
  const dy = y[site - count] - py;
  const d = Math.sqrt(dx * dx + dy * dy);
  return [dx / d, dy / d];
}

/** Names each node by one node of all those that hang together below the radius. */
function joinBelow(axis: MedialAxis, radius: number): Int32Array {
  const { edgeFrom, edgeTo, nodeR, neckCount } = axis;
  const parent = new Int32Array(nodeR.length);
  for (let k = 0; k < parent.length; k++) {
    parent[k] = k;
  }
  const find = (k: number): number => {
    let at = k;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  // edges are made from the boundary up: backwards, the way up from each edge's end is known already
  for (let e = edgeFrom.length - 1; e >= 0; e--) {
    const from = edgeFrom[e];
    const to = edgeTo[e];
    if (nodeR[to] < radius && nodeR[from] < radius) {
      if (from >= neckCount && parent[from] === from && parent[to] !== from) {
        parent[from] = parent[to];
      } else {
        parent[find(from)] = find(to);
      }
    }
  }
  for (let k = 0; k < parent.length; k++) {
    parent[k] = find(k);
  }
  return parent;
}
