import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/** Whether some neck has less clearance than the radius: only then can a narrow part have more than one mouth. */
export function hasNarrowNeck({ nodeR, neckCount }: MedialAxis, radius: number): boolean {
  for (let k = 0; k < neckCount; k++) {
    if (nodeR[k] < radius) {
      return true;
    }
  }
  return false;
}

/** The parts of the axis that hang together where the clearance is less than a radius. Linear time. */
export class NarrowParts {
  /** A node farther up for each node, 1 more than its index; 0 at the node that gives the part its name. */
  readonly #above: Int32Array;

  constructor({ edgeFrom, edgeTo, nodeR, neckCount }: MedialAxis, radius: number) {
    const above = new Int32Array(nodeR.length);
    this.#above = above;
    // edges are made from the boundary up: backwards, the way up from each edge's end is known already
    for (let e = edgeFrom.length - 1; e >= 0; e--) {
      const from = edgeFrom[e];
      const to = edgeTo[e];
      if (nodeR[to] < radius && nodeR[from] < radius) {
        if (from >= neckCount && above[from] === 0 && above[to] !== from + 1) {
          above[from] = above[to] === 0 ? to + 1 : above[to];
        } else {
          const a = this.nameOf(from);
          const b = this.nameOf(to);
          if (a !== b) {
            above[a] = b + 1;
          }
        }
      }
    }
  }

  /** Name of the part that a node belongs to: one of its nodes. */
  nameOf(node: number): number {
    const above = this.#above;
    let at = node;
    while (above[at] !== 0) {
      const next = above[at] - 1;
      if (above[next] !== 0) {
        above[at] = above[next];
      }
      at = next;
    }
    return at;
  }
}
