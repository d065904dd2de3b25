import { pollStep } from '@pourproof/plane';
import { crossingEdges } from '../measure/axis-blocks.ts';
import { AxisEdge } from '../measure/axis-edge.ts';
import { angleBetween } from '../measure/cell-forms.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { NarrowParts } from './narrow-parts.ts';

/**
 * Discs of a cutter where it stops as it comes from where it fits. Disc k at `(x[k], y[k])`, relative to the
 * axis' origin, touches the left wall in direction `angle[k]` and bounds what is cut by an arc of `sweep[k]`
 * radians from there to the right wall, turning from +x to +y.
 */
export interface StoppedDiscs {
  readonly radius: number;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly angle: readonly number[];
  readonly sweep: readonly number[];
  /**
   * The narrow part that each disc closes; 0 for all parts without bottleneck, which have no other crossing.
   */
  readonly closes: readonly number[];
}

/**
 * Where the clearance along the axis passes a radius: crossing k, with its disc, lies on axis edge `edge[k]`.
 */
export interface LevelCrossings extends StoppedDiscs {
  readonly edge: readonly number[];
  /** The crossing on each axis edge, -1 for none. */
  readonly ofEdge: Int32Array;
}

/** The level crossings of the axis at a radius, mm, in the order of their edges. Linear time. */
export function findLevelCrossings(axis: MedialAxis, radius: number): LevelCrossings {
  const edge = crossingEdges(axis, radius);
  const ofEdge = new Int32Array(axis.edgeFrom.length).fill(-1);
  for (let k = 0; k < edge.length; k++) {
    pollStep();
    ofEdge[edge[k]] = k;
  }
  const { x, y, angle, sweep, closes } = stoppedDiscs(axis, radius, edge);
  return { radius, edge, x, y, angle, sweep, closes, ofEdge };
}

/** The discs at level crossings on the given edges, along all of which the clearance passes the radius. */
export function stoppedDiscs(axis: MedialAxis, radius: number, edges: readonly number[]): StoppedDiscs {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR, boundary } = axis;
  const { count } = boundary;
  const shape = new AxisEdge(axis);
  let parts: NarrowParts | undefined;
  const x: number[] = [];
  const y: number[] = [];
  const angle: number[] = [];
  const sweep: number[] = [];
  const closes: number[] = [];
  for (const e of edges) {
    pollStep();
    const left = edgeLeft[e];
    const right = edgeRight[e];
    let px: number;
    let py: number;
    if (left < count && right < count) {
      const from = edgeFrom[e];
      const to = edgeTo[e];
      const share = (radius - nodeR[from]) / (nodeR[to] - nodeR[from]);
      px = nodeX[from] + share * (nodeX[to] - nodeX[from]);
      py = nodeY[from] + share * (nodeY[to] - nodeY[from]);
    } else {
      shape.load(e);
      shape.at(radius);
      px = shape.x;
      py = shape.y;
    }
    x.push(px);
    y.push(py);
    angle.push(contactAngle(boundary, left, px, py));
    sweep.push(sweepBetween(boundary, left, right, px, py));
    if (isCornerBranch(axis, e)) {
      closes.push(0);
    } else {
      parts ??= new NarrowParts(axis, radius);
      closes.push(parts.closedBy(e));
    }
  }
  return { radius, x, y, angle, sweep, closes };
}

/** Whether axis edge e starts in a convex corner of the boundary. */
function isCornerBranch(axis: MedialAxis, e: number): boolean {
  const { edgeFrom, edgeLeft, edgeRight, nodeR, boundary } = axis;
  return edgeLeft[e] < boundary.count && edgeRight[e] < boundary.count && nodeR[edgeFrom[e]] === 0;
}

/**
 * Angle, 0 … π, between the directions to both contacts from the last point of an axis edge that was asked
 * for.
 */
export function sweepAt(boundary: MedialAxis['boundary'], edge: AxisEdge): number {
  return sweepBetween(boundary, edge.left, edge.right, edge.x, edge.y);
}

/** Direction, radians, from a point of the axis to its contact with a site. */
function contactAngle(
  { count, x, y, tx, ty }: MedialAxis['boundary'],
  site: number,
  px: number,
  py: number,
): number {
  return site < count
    ? Math.atan2(-tx[site], ty[site])
    : Math.atan2(y[site - count] - py, x[site - count] - px);
}

/** Angle between the directions from a point of the axis to its contacts with two sites. */
function sweepBetween(
  { count, x, y, tx, ty }: MedialAxis['boundary'],
  left: number,
  right: number,
  px: number,
  py: number,
): number {
  const ax = left < count ? ty[left] : x[left - count] - px;
  const ay = left < count ? -tx[left] : y[left - count] - py;
  const bx = right < count ? ty[right] : x[right - count] - px;
  const by = right < count ? -tx[right] : y[right - count] - py;
  return angleBetween(ax, ay, bx, by);
}
