import FlatQueue from 'flatqueue';
import { excessBeyondCorner } from '../measure/beyond-corners.ts';
import { cornerShare } from '../measure/corner-share.ts';
import { shareAtLength } from '../measure/share-at-length.ts';
import { firstWay } from '../measure/slowing-way.ts';
import { type RisingWay, slowingWayUp } from '../measure/slowing-way-up.ts';
import { CORNER } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { LEVEL_REL_TOL } from '../medial-axis/tolerances.ts';
import type { WaysUp } from './ways-up.ts';

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
 * the way widens it by no more than a taper's least growth. Ways of many ends that run together are not walked: {@link slowingWayUp}.
 */
export function branchAbove(ways: WaysUp, e: number, radius: number): Branch {
  const up = new BranchUp(ways, e, radius);
  const root = slowingWayUp(up, up.stopMm) ?? up.wholeMm;
  const clearance = up.radiusAt(root);
  return { reachMm: root - clearance, widthMm: 2 * clearance };
}

/** The way up the axis from where a cutter stops, with exact clearances, so that it does not hang on where the boundary has points. */
class BranchUp implements RisingWay {
  readonly stopMm: number;
  readonly wholeMm: number;
  readonly #ways: WaysUp;
  readonly #first: number;
  readonly #last: number;
  /** Distance from the boundary to the low end of the first edge, mm. */
  readonly #low: number;

  constructor(ways: WaysUp, e: number, radius: number) {
    const { axis, strokes, shape } = ways;
    const { edgeFrom, edgeTo, nodeR } = axis;
    const { part, start, reach, length } = strokes;
    this.#ways = ways;
    this.#first = e;
    const low = reach[edgeFrom[e]];
    shape.load(e);
    const below = shape.lengthBetween(0, shape.shareOf(radius));
    // beyond a bottleneck the way goes down again
    this.#low = low < Infinity ? low : farthestBelow(axis, e, length);
    this.stopMm = this.#low + below;
    const isCorner = excessBeyondCorner(low + below, radius) <= 0;
    const last = ways.endOf(e, isCorner);
    this.#last = last;
    const before = reach[edgeFrom[last]];
    const whole = Math.max(0, length[last]);
    if (isCorner && part[last] !== CORNER && excessBeyondCorner(before + whole, nodeR[edgeTo[last]]) > 0) {
      // the corner ends within the edge, where a stroke begins
      shape.load(last);
      const begins = excessBeyondCorner(before, nodeR[edgeFrom[last]]) > 0 ? 0 : cornerShare(shape, before);
      const share = Math.max(begins, start[last]);
      this.wholeMm = Math.max(this.stopMm, this.#wayTo(last) + shape.lengthBetween(0, share));
    } else {
      this.wholeMm = this.#wayTo(last) + whole;
      this.wholeMm = this.#widestFrom();
    }
  }

  /** Way at which it is as wide as at its end: along a stroke of even width that end is where rounding puts it. */
  #widestFrom(): number {
    const widest = this.radiusAt(this.wholeMm) * (1 - LEVEL_REL_TOL);
    const lacksAt = (way: number): number => widest - this.radiusAt(way);
    return lacksAt(this.stopMm) > 0 ? firstWay(this.stopMm, this.wholeMm, lacksAt) : this.stopMm;
  }

  radiusAt(way: number): number {
    const { shape } = this.#ways;
    const at = Math.min(way, this.wholeMm);
    const edge = this.#edgeAt(at);
    shape.load(edge);
    const whole = shape.lengthBetween(0, 1);
    shape.atShare(whole > 0 ? shareAtLength(shape, 0, Math.max(0, at - this.#wayTo(edge)), whole) : 1);
    return shape.clearance;
  }

  nodesAfter(way: number, upTo: number, most: number): number[] {
    const found: number[] = [];
    for (let edge = this.#edgeAt(way); edge !== this.#last && found.length < most; ) {
      edge = this.#ways.next(edge);
      const next = this.#wayTo(edge);
      if (next > upTo) {
        break;
      }
      found.push(next);
    }
    return found;
  }

  #edgeAt(way: number): number {
    return this.#ways.edgeAt(this.#first, this.#last, way - this.#low);
  }

  #wayTo(edge: number): number {
    return this.#low + this.#ways.between(this.#first, edge);
  }
}

/** Way from the low end of edge e to the point of the axis below it that is farthest, each by its shortest way (Dijkstra 1959), mm. */
function farthestBelow({ edgeFrom, edgeTo, nextHalf }: MedialAxis, e: number, length: Float64Array): number {
  const done = new Set<number>();
  // half-edges by which nodes are reached, even ones lead up, by the way to their end
  const queue = new FlatQueue();
  queue.push(2 * e + 1, 0);
  let way = 0;
  for (let far = queue.peekValue(); far !== undefined; far = queue.peekValue()) {
    const half = queue.pop() ?? 0;
    const node = (half & 1) === 0 ? edgeTo[half >> 1] : edgeFrom[half >> 1];
    if (done.has(node)) {
      continue;
    }
    done.add(node);
    way = far;
    for (let out = nextHalf[half]; out !== (half ^ 1); out = nextHalf[out ^ 1]) {
      if (out >> 1 !== e && length[out >> 1] >= 0) {
        queue.push(out, far + length[out >> 1]);
      }
    }
  }
  return way;
}
