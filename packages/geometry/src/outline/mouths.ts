import { crossingEdges } from '../measure/axis-blocks.ts';
import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { hasNarrowNeck, NarrowParts } from './narrow-parts.ts';

/**
 * Discs of the cutter where it stops, coming from where it fits: disc k at `(x[k], y[k])`, relative to the axis' origin, touches the left wall in
 * direction `angle[k]` and leaves the arc of `sweep[k]` radians from there to the right wall, turning from +x to +y.
 */
export interface StoppedDiscs {
  readonly radius: number;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly angle: readonly number[];
  readonly sweep: readonly number[];
  /** Name of the narrow part that each disc closes, -1 where it is known to close one alone. */
  readonly closes: readonly number[];
}

/** The places where the clearance passes the cutter's radius: mouth k, with its disc, lies on axis edge `edge[k]`. */
export interface Mouths extends StoppedDiscs {
  readonly edge: readonly number[];
  /** Mouth on each axis edge, -1 for none. */
  readonly ofEdge: Int32Array;
}

/** All mouths of the axis at a radius, mm, in the order of their edges. Linear time. */
export function findMouths(axis: MedialAxis, radius: number): Mouths {
  const edge = crossingEdges(axis, radius);
  const ofEdge = new Int32Array(axis.edgeFrom.length).fill(-1);
  for (let k = 0; k < edge.length; k++) {
    ofEdge[edge[k]] = k;
  }
  return { ...stoppedDiscs(axis, radius, edge), edge, ofEdge };
}

/** The discs of mouths on the given edges, all of which cross the radius. */
export function stoppedDiscs(axis: MedialAxis, radius: number, edges: readonly number[]): StoppedDiscs {
  const { edgeFrom, boundary } = axis;
  const parts = hasNarrowNeck(axis, radius) ? new NarrowParts(axis, radius) : undefined;
  const place = new CrossingPlace(axis, radius);
  const x: number[] = [];
  const y: number[] = [];
  const angle: number[] = [];
  const sweep: number[] = [];
  const closes: number[] = [];
  for (const e of edges) {
    place.find(e);
    x.push(place.x);
    y.push(place.y);
    angle.push(contactAngle(boundary, axis.edgeLeft[e], place.x, place.y));
    sweep.push(sweepBetween(boundary, axis.edgeLeft[e], axis.edgeRight[e], place.x, place.y));
    closes.push(parts === undefined || isCornerBranch(axis, e) ? -1 : parts.nameOf(edgeFrom[e]));
  }
  return { radius, x, y, angle, sweep, closes };
}

/** Whether axis edge e starts in a convex corner of the boundary. */
export function isCornerBranch(axis: MedialAxis, e: number): boolean {
  const { edgeFrom, edgeLeft, edgeRight, nodeR, boundary } = axis;
  return edgeLeft[e] < boundary.count && edgeRight[e] < boundary.count && nodeR[edgeFrom[e]] === 0;
}

/** Turn in radians, 0 … π, between the directions to both contacts at the point where `edge` was last asked. */
export function sweepAt(boundary: MedialAxis['boundary'], edge: AxisEdge): number {
  return sweepBetween(boundary, edge.left, edge.right, edge.x, edge.y);
}

/** Sum of the sweeps of the discs of a radius on the given edges, which it crosses; radians. */
export function sumOfSweeps(axis: MedialAxis, radius: number, edges: readonly number[]): number {
  const place = new CrossingPlace(axis, radius);
  let sum = 0;
  for (const e of edges) {
    place.find(e);
    sum += sweepBetween(axis.boundary, axis.edgeLeft[e], axis.edgeRight[e], place.x, place.y);
  }
  return sum;
}

/** Where edges cross a clearance. */
class CrossingPlace {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;
  readonly #radius: number;
  x = 0;
  y = 0;

  constructor(axis: MedialAxis, radius: number) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#radius = radius;
  }

  /** Sets `x`, `y` to the place on edge e. */
  find(e: number): void {
    const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR, boundary } = this.#axis;
    if (edgeLeft[e] < boundary.count && edgeRight[e] < boundary.count) {
      const from = edgeFrom[e];
      const to = edgeTo[e];
      const share = (this.#radius - nodeR[from]) / (nodeR[to] - nodeR[from]);
      this.x = nodeX[from] + share * (nodeX[to] - nodeX[from]);
      this.y = nodeY[from] + share * (nodeY[to] - nodeY[from]);
    } else {
      this.#edge.load(e);
      this.#edge.at(this.#radius);
      this.x = this.#edge.x;
      this.y = this.#edge.y;
    }
  }
}

/** Angle of the direction from a point of the axis to its contact with a site. */
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

/** Turn between the directions from a point of the axis to its contacts with two sites. */
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
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}
