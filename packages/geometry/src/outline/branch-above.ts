import { AxisEdge } from '../measure/axis-edge.ts';
import { excessBeyondCorner } from '../measure/beyond-corners.ts';
import { cornerShare } from '../measure/corner-share.ts';
import { shareAtLength } from '../measure/share-at-length.ts';
import { slowingWay, type Widening } from '../measure/slowing-way.ts';
import { stepAtWay } from '../measure/step-at-way.ts';
import { CORNER, type StrokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { risingFrom } from './narrow-parts.ts';

/** The branch of the axis to which an end belongs, up to its root: where it meets strokes or is as wide as it gets. */
export interface Branch {
  /** How far it reaches, along the axis, beyond the largest disc at its root, mm. */
  readonly reachMm: number;
  /** Diameter of that disc, mm. */
  readonly widthMm: number;
}

/**
 * The branch of a corner or tip that a cutter of some radius leaves, from its end on the boundary up past axis edge `e`, on which the
 * cutter stops. From a corner the way ends at the stroke or pocket whose corner it is, from a tip where strokes meet, or where doubling
 * the way widens it by no more than a taper's least growth.
 */
export function branchAbove(axis: MedialAxis, e: number, radius: number, strokes: StrokeParts): Branch {
  const up = new WayUp(axis, e, radius, strokes);
  const root = slowingWay(up, 0, up.stopMm) ?? up.wholeMm;
  const clearance = up.radiusAt(root);
  return { reachMm: root - clearance, widthMm: 2 * clearance };
}

/** The way up the axis from where a cutter stops, with exact clearances, so that it does not hang on where the boundary has points. */
class WayUp implements Widening {
  /** Distance from the boundary at the low end of each edge, and at the end of the way, mm. */
  readonly ways: number[];
  /** Distance from the boundary to where the cutter stops, mm. */
  readonly stopMm: number;
  readonly #edges: number[] = [];
  readonly #shape: AxisEdge;

  constructor(axis: MedialAxis, e: number, radius: number, strokes: StrokeParts) {
    const { edgeFrom, edgeTo, nodeR } = axis;
    const { part, start, reach, degree, same, length } = strokes;
    const shape = new AxisEdge(axis);
    this.#shape = shape;
    const low = reach[edgeFrom[e]];
    shape.load(e);
    const below = shape.lengthBetween(0, shape.shareOf(radius));
    // beyond a bottleneck the way goes down again
    this.ways = [low < Infinity ? low : farthestBelow(axis, e, length)];
    this.stopMm = this.ways[0] + below;
    const isCorner = excessBeyondCorner(low + below, radius) <= 0;
    for (let up = e; up >= 0; up = risingFrom(axis, up)) {
      const [from, to] = [edgeFrom[up], edgeTo[up]];
      const way = this.wholeMm;
      const whole = Math.max(0, length[up]);
      this.#edges.push(up);
      const before = reach[from];
      // a steep taper is a corner too
      const isSteep = part[up] === CORNER;
      if (isCorner && !isSteep && excessBeyondCorner(before + whole, nodeR[to]) > 0) {
        // the corner ends within the edge, where a stroke begins
        shape.load(up);
        const begins = excessBeyondCorner(before, nodeR[from]) > 0 ? 0 : cornerShare(shape, before);
        const share = Math.max(begins, start[up]);
        this.ways.push(Math.max(this.stopMm, way + shape.lengthBetween(0, share)));
        break;
      }
      this.ways.push(way + whole);
      if (isCorner ? !isSteep && excessBeyondCorner(reach[to], nodeR[to]) > 0 : degree[same[to]] > 2) {
        break;
      }
    }
  }

  get wholeMm(): number {
    return this.ways[this.ways.length - 1];
  }

  radiusAt(way: number): number {
    const { ways } = this;
    const at = Math.min(way, this.wholeMm);
    const step = stepAtWay(ways, at);
    const shape = this.#shape;
    shape.load(this.#edges[step]);
    const whole = shape.lengthBetween(0, 1);
    shape.atShare(whole > 0 ? shareAtLength(shape, 0, at - ways[step], whole) : 1);
    return shape.clearance;
  }
}

/** Way from the low end of edge e to the point of the axis below it that is farthest, each by its shortest way, mm. */
function farthestBelow({ edgeFrom, edgeTo, nextHalf }: MedialAxis, e: number, length: Float64Array): number {
  const ways = new Map<number, number>([[edgeFrom[e], 0]]);
  // half-edges by which a node is reached: even ones lead up
  const queue = [2 * e + 1];
  for (let half = queue.pop(); half !== undefined; half = queue.pop()) {
    const way = ways.get(endOf(half)) ?? 0;
    for (let out = nextHalf[half]; out !== (half ^ 1); out = nextHalf[out ^ 1]) {
      const far = way + length[out >> 1];
      if (out >> 1 !== e && length[out >> 1] >= 0 && far < (ways.get(endOf(out)) ?? Infinity)) {
        ways.set(endOf(out), far);
        queue.push(out);
      }
    }
  }
  function endOf(half: number): number {
    return (half & 1) === 0 ? edgeTo[half >> 1] : edgeFrom[half >> 1];
  }
  return Math.max(...ways.values());
}
