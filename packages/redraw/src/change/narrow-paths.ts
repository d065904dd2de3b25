import { AxisEdge, type MedialAxis } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';

/**
 * A branch that ends is only a corner where its clearance falls at least by this share of its length: a corner of less than 17°
 * is a stroke that tapers (our choice).
 */
const CORNER_SLOPE = 0.15;

/** What ends in less than this share of its own mean width runs out into a tip (our choice): only blunt ends are strokes that stay. */
const BLUNT_SHARE = 0.5;

/** A way along the axis through what is narrow: from one wide place to another, to a fork, to an end, or round in a ring. */
export interface NarrowPath {
  /** Edges in order, with 1 where an edge is gone down instead of up. */
  readonly edges: readonly (readonly [edge: number, isDown: boolean])[];
  /** Where it is narrowest, absolute, and how wide it is there. */
  readonly atMm: Point;
  readonly widthMm: number;
  /** Whether its first and its last end are those of a stroke. */
  readonly isLoose: readonly [boolean, boolean];
}

/**
 * The ways through all that is narrower than twice `level` and does not just run into a corner: what connects wide places, goes around
 * something or is a stroke with an end.
 *
 * @param isStroke where someone knows better what is a stroke: asked of points of the axis, so that no way through it is taken for a tip
 */
export function narrowPaths(
  axis: MedialAxis,
  level: number,
  isStroke?: (x: number, y: number) => boolean,
): readonly NarrowPath[] {
  const graph = new NarrowGraph(axis, level, isStroke);
  graph.prune();
  while (graph.dropTapers()) {
    graph.prune();
  }
  return graph.paths();
}

class NarrowGraph {
  readonly #axis: MedialAxis;
  readonly #level: number;
  readonly #isKept: Uint8Array;
  /** Kept edges at each node; wide nodes end every path, so theirs are not asked for. */
  readonly #at: Map<number, number[]> = new Map();
  readonly #slope: Float64Array;
  readonly #isStroke: Uint8Array;
  #rising: ReadonlySet<number> | null = null;

  constructor(axis: MedialAxis, level: number, isStroke?: (x: number, y: number) => boolean) {
    const { edgeFrom, edgeTo, nodeR, nodeX, nodeY, boundary } = axis;
    this.#axis = axis;
    this.#level = level;
    this.#isKept = new Uint8Array(edgeFrom.length);
    this.#slope = new Float64Array(edgeFrom.length);
    this.#isStroke = new Uint8Array(edgeFrom.length);
    const edge = new AxisEdge(axis);
    for (let e = 0; e < edgeFrom.length; e++) {
      const [from, to] = [edgeFrom[e], edgeTo[e]];
      if (nodeR[from] >= level || edge.isSecondary(e)) {
        continue;
      }
      // the middle of what is narrow of it
      const share = nodeR[to] > level ? (level - nodeR[from]) / (nodeR[to] - nodeR[from]) / 2 : 0.5;
      const [x, y] = [from, to].reduce<[number, number]>(
        ([sx, sy], node, k) => [
          sx + (k === 0 ? 1 - share : share) * nodeX[node],
          sy + (k === 0 ? 1 - share : share) * nodeY[node],
        ],
        [boundary.originX, boundary.originY],
      );
      this.#isStroke[e] = isStroke?.(x, y) === true ? 1 : 0;
      const length = Math.hypot(nodeX[to] - nodeX[from], nodeY[to] - nodeY[from]);
      this.#slope[e] = length > 0 ? (nodeR[to] - nodeR[from]) / length : 0;
      this.#isKept[e] = 1;
      for (const node of from === to ? [from] : [from, to]) {
        const there = this.#at.get(node);
        if (there === undefined) {
          this.#at.set(node, [e]);
        } else {
          there.push(e);
        }
      }
    }
  }

  /** Takes off branches that run into corners, from their ends. */
  prune(): void {
    const { edgeFrom, edgeTo } = this.#axis;
    const waiting = [...this.#at.keys()];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      const there = this.#edgesAt(node);
      const [e] = there;
      if (there.length !== 1 || this.#isWide(node) || this.#slope[e] < CORNER_SLOPE || edgeFrom[e] !== node) {
        continue;
      }
      this.#isKept[e] = 0;
      waiting.push(edgeTo[e]);
    }
  }

  /** Takes off branches that run out into a tip, and such as are shorter than what closes is wide; whether there were any. */
  dropTapers(): boolean {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const tapers = this.paths().filter(({ edges }) => {
      const [first, last] = [edges[0], edges[edges.length - 1]] as [[number, boolean], [number, boolean]];
      const ends = [
        first[1] ? edgeTo[first[0]] : edgeFrom[first[0]],
        last[1] ? edgeFrom[last[0]] : edgeTo[last[0]],
      ];
      const loose = ends.filter((node) => !this.#isWide(node) && this.#edgesAt(node).length === 1);
      const least = Math.min(...loose.map((node) => nodeR[node]));
      const { length, mean } = this.#lengthOf(edges);
      const isTaken = edges.some(([e]) => this.#isStroke[e] !== 0);
      return !isTaken && loose.length > 0 && (least < BLUNT_SHARE * mean || length < 2 * this.#level);
    });
    for (const [e] of tapers.flatMap(({ edges }) => edges)) {
      this.#isKept[e] = 0;
    }
    return tapers.length > 0;
  }

  /** Length of a path and the mean clearance on it. */
  #lengthOf(edges: NarrowPath['edges']): { readonly length: number; readonly mean: number } {
    const { edgeFrom, edgeTo, nodeR, nodeX, nodeY } = this.#axis;
    let [length, sum] = [0, 0];
    for (const [e] of edges) {
      const own = Math.hypot(nodeX[edgeTo[e]] - nodeX[edgeFrom[e]], nodeY[edgeTo[e]] - nodeY[edgeFrom[e]]);
      length += own;
      sum += (own * (nodeR[edgeFrom[e]] + Math.min(nodeR[edgeTo[e]], this.#level))) / 2;
    }
    return { length, mean: length > 0 ? sum / length : 0 };
  }

  paths(): readonly NarrowPath[] {
    const { edgeFrom } = this.#axis;
    const isDone = new Uint8Array(this.#isKept.length);
    const found: NarrowPath[] = [];
    const ends = [...this.#at.keys()].filter((node) => this.#isEnd(node));
    // what is left after paths between ends goes round in rings
    const starts = [...ends, ...edgeFrom];
    for (const start of starts) {
      for (const e of this.#edgesAt(start)) {
        if (isDone[e] === 0) {
          found.push(this.#follow(start, e, isDone));
        }
      }
    }
    return found;
  }

  #follow(start: number, first: number, isDone: Uint8Array): NarrowPath {
    const { edgeFrom, edgeTo, nodeR, nodeX, nodeY, boundary } = this.#axis;
    const edges: [number, boolean][] = [];
    let node = start;
    let narrowest = edgeFrom[first];
    for (let e: number | undefined = first; e !== undefined; ) {
      isDone[e] = 1;
      const isDown = edgeTo[e] === node && edgeFrom[e] !== node;
      edges.push([e, isDown]);
      if (nodeR[edgeFrom[e]] < nodeR[narrowest]) {
        narrowest = edgeFrom[e];
      }
      node = isDown ? edgeFrom[e] : edgeTo[e];
      e = this.#isEnd(node) ? undefined : this.#edgesAt(node).find((other) => isDone[other] === 0);
    }
    return {
      edges,
      atMm: [boundary.originX + nodeX[narrowest], boundary.originY + nodeY[narrowest]],
      widthMm: 2 * nodeR[narrowest],
      isLoose: [this.#isLoose(start), this.#isLoose(node)],
    };
  }

  /** Where nothing rises on from: all that is beside it are the corners of an end. */
  #isLoose(node: number): boolean {
    return !this.#isWide(node) && this.#edgesAt(node).length === 1 && !this.#risesOn().has(node);
  }

  #risesOn(): ReadonlySet<number> {
    if (this.#rising === null) {
      const { edgeFrom } = this.#axis;
      this.#rising = new Set(edgeFrom.filter((_, e) => this.#isKept[e] === 0));
    }
    return this.#rising;
  }

  #isWide(node: number): boolean {
    return this.#axis.nodeR[node] >= this.#level;
  }

  #isEnd(node: number): boolean {
    return this.#isWide(node) || this.#edgesAt(node).length !== 2;
  }

  #edgesAt(node: number): number[] {
    return (this.#at.get(node) ?? []).filter((e) => this.#isKept[e] !== 0);
  }
}
