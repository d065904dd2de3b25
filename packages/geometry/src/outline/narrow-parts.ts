import { pollStep, UnionFind } from '@pourproof/plane';
import { BLOCK } from '../measure/axis-blocks.ts';
import { MIN_CLEARANCE, SUM_STRIDE } from '../measure/cell-sums.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/**
 * The connected parts of the axis where the clearance is less than a radius (its sublevel set). From each
 * node except bottlenecks at most one edge rises, so that every path up from a node ends at the same level
 * crossing or top. Only bottlenecks, from which two paths rise, join what ends apart.
 */
export class NarrowParts {
  readonly #axis: MedialAxis;
  readonly #radius: number;
  /** Part of each node passed so far, before joining; 0 for none. */
  readonly #part: Int32Array;
  /** Parts that are connected; part 0 means none. */
  readonly #joined = new UnionFind(1);

  /** Joins what bottlenecks connect; linear time. */
  constructor(axis: MedialAxis, radius: number) {
    this.#axis = axis;
    this.#radius = radius;
    const { blocks, edgeFrom, nodeR, bottleneckCount } = axis;
    this.#part = new Int32Array(nodeR.length);
    for (let at = 0, first = 0; at < blocks.length; at += SUM_STRIDE, first += BLOCK) {
      const end = blocks[at + MIN_CLEARANCE] < radius ? Math.min(first + BLOCK, edgeFrom.length) : first;
      for (let e = first; e < end; e++) {
        pollStep();
        if (edgeFrom[e] < bottleneckCount && nodeR[edgeFrom[e]] < radius) {
          this.#passUp(e);
        }
      }
    }
  }

  /**
   * The part that a level crossing on edge e closes; 0 for a part without bottleneck, which has no other
   * crossing. In a part with a bottleneck, the crossing ends a path up from one: whatever else lies below the
   * crossing joins only there.
   */
  closedBy(e: number): number {
    return this.#joined.find(this.#part[this.#axis.edgeFrom[e]]);
  }

  /** The part that contains edge e, whose clearance at the low end is below the radius. */
  of(e: number): number {
    const from = this.#axis.edgeFrom[e];
    if (this.#part[from] === 0) {
      this.#passUp(e);
    }
    return this.#joined.find(this.#part[from]);
  }

  /**
   * Assigns all nodes on the path up along edge e and beyond to one part, up to a level crossing, a top or a
   * node passed before.
   */
  #passUp(e: number): void {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const part = this.#part;
    let node = edgeFrom[e];
    let name = part[node];
    if (name === 0) {
      name = this.#joined.add();
    }
    part[node] = name;
    for (let up = e; up >= 0; up = risingFrom(this.#axis, up)) {
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
}

/** The edge that rises from the high end of an edge; -1 at a top. */
export function risingFrom({ nextHalf }: Pick<MedialAxis, 'nextHalf'>, e: number): number {
  let half = nextHalf[2 * e];
  while ((half & 1) === 1) {
    if (half === 2 * e + 1) {
      return -1;
    }
    half = nextHalf[half - 1];
  }
  return half >> 1;
}
