import { UnionFind } from '@pourproof/plane';
import { BLOCK } from '../measure/axis-blocks.ts';
import { MIN_CLEARANCE, SUM_STRIDE } from '../measure/cell-sums.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/**
 * The parts of the axis that hang together where the clearance is less than a radius. From each node but a bottleneck at most one edge rises, so all
 * ways up from a place end alike: at a crossing or at a top. Only bottlenecks, from which two ways rise, join what ends apart.
 */
export class NarrowParts {
  readonly #axis: MedialAxis;
  readonly #radius: number;
  /** Part of each node that was passed, before joining; 0 for none yet. */
  readonly #part: Int32Array;
  /** Parts that hang together; part 0 is none. */
  readonly #joined = new UnionFind(1);

  /** Joins all that hangs together by bottlenecks; linear time. */
  constructor(axis: MedialAxis, radius: number) {
    this.#axis = axis;
    this.#radius = radius;
    const { blocks, edgeFrom, nodeR, bottleneckCount } = axis;
    this.#part = new Int32Array(nodeR.length);
    for (let at = 0, first = 0; at < blocks.length; at += SUM_STRIDE, first += BLOCK) {
      const end = blocks[at + MIN_CLEARANCE] < radius ? Math.min(first + BLOCK, edgeFrom.length) : first;
      for (let e = first; e < end; e++) {
        if (edgeFrom[e] < bottleneckCount && nodeR[edgeFrom[e]] < radius) {
          this.#passUp(e);
        }
      }
    }
  }

  /**
   * Number of the part that a crossing on edge e closes; 0 where that has no bottleneck, and so no other crossing. If it has one, the crossing ends a way up from it:
   * what else hangs together below the crossing only joins there.
   */
  closedBy(e: number): number {
    return this.#joined.find(this.#part[this.#axis.edgeFrom[e]]);
  }

  /** Number of the part in which edge e, with less clearance at its low end, lies. */
  of(e: number): number {
    const from = this.#axis.edgeFrom[e];
    if (this.#part[from] === 0) {
      this.#passUp(e);
    }
    return this.#joined.find(this.#part[from]);
  }

  /** Names all nodes on the way up along edge e and beyond, up to a crossing, a top or what has been passed. */
  #passUp(e: number): void {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const part = this.#part;
    let node = edgeFrom[e];
    let name = part[node];
    if (name === 0) {
      name = this.#joined.add();
    }
    part[node] = name;
    for (let up = e; up >= 0; up = this.#risingFrom(up)) {
      node = edgeTo[up];
      if (nodeR[node] >= this.#radius) {
        return;
      }
      if (part[node] !== 0) {
        this.#joined.join(name, part[node]);
        return;
      }
      part[node] = name;
    }
  }

  /** The edge that rises from the high end of an edge; -1 at a top. */
  #risingFrom(e: number): number {
    const { nextHalf } = this.#axis;
    let half = nextHalf[2 * e];
    while ((half & 1) === 1) {
      if (half === 2 * e + 1) {
        return -1;
      }
      half = nextHalf[half - 1];
    }
    return half >> 1;
  }
}
