import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { AxisEdge } from './axis-edge.ts';
import type { BeyondCorners } from './beyond-corners.ts';
import { shareAtLength } from './share-at-length.ts';
import { stepAtWay } from './step-at-way.ts';

/** A branch may narrow again by this share of its width and still counts as widening (our choice). */
const WAVE = 0.1;
/** A place on a branch: so far up the edge at which the branch goes on, counted from its low end. */
export interface BranchPlace {
  /** Number of the edge along the branch, from 0; as many as there are edges at the far end. */
  readonly step: number;
  /** Share of that edge from its low end; 0 where the place is the node before it. */
  readonly share: number;
}

/**
 * The axis of a stroke from its free end to where it meets others or is widest, across waves in its width.
 * Clearances along it are exact, so that they do not depend on where the boundary has its points.
 */
export class EndBranch {
  readonly edges: number[] = [];
  /** The node before each edge, and the one after the last. */
  readonly nodes: number[];
  /** Distance along the axis from the free end, and clearance, at each node, mm. */
  readonly ways: number[] = [0];
  readonly radii: number[];
  readonly #axis: MedialAxis;
  readonly #shape: AxisEdge;
  /** Share of the first edge at which the stroke begins: what is below is a corner and no part of the branch. */
  readonly #firstShare: number;

  /**
   * The branch from a free end, a node where one stroke ends; `start` holds the share of each edge at which its stroke
   * begins.
   */
  constructor(axis: MedialAxis, end: number, graph: BeyondCorners, start: Float64Array, shape: AxisEdge) {
    const first = graph.otherEdge[graph.same[end]];
    this.#axis = axis;
    this.#shape = shape;
    this.#firstShare = start[first];
    shape.load(first);
    shape.atShare(this.#firstShare);
    this.nodes = [end];
    this.radii = [this.#firstShare > 0 ? shape.clearance : axis.nodeR[end]];
    this.#follow(graph, shape.lengthBetween(0, this.#firstShare));
  }

  /** Goes on from node to node; `left` is the length of the first edge that is no part of the branch. */
  #follow({ length, degree, otherEdge, same }: BeyondCorners, left: number): void {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const { edges, nodes, ways, radii } = this;
    let [place] = nodes;
    let widest = 0;
    for (let at = otherEdge[same[place]]; ; at = otherEdge[same[place]] ^ at) {
      place = same[edgeFrom[at]] === same[place] ? edgeTo[at] : edgeFrom[at];
      if (nodeR[place] < (1 - WAVE) * radii[widest]) {
        break;
      }
      edges.push(at);
      nodes.push(place);
      ways.push(edges.length === 1 ? length[at] - left : ways[ways.length - 1] + length[at]);
      radii.push(nodeR[place]);
      if (nodeR[place] >= radii[widest]) {
        widest = radii.length - 1;
      }
      if (degree[same[place]] !== 2) {
        break;
      }
    }
    edges.length = widest;
    for (const list of [nodes, ways, radii]) {
      list.length = widest + 1;
    }
  }

  /** Length of the branch, mm. */
  get wholeMm(): number {
    return this.ways[this.ways.length - 1];
  }

  /** Whether the clearance rises along an edge of the branch, away from the free end. */
  isRising(step: number): boolean {
    return this.#axis.edgeTo[this.edges[step]] === this.nodes[step + 1];
  }

  /** Clearance at a distance from the free end, mm; that of the last node beyond it. */
  radiusAt(way: number): number {
    const { ways, radii } = this;
    if (way >= this.wholeMm) {
      return radii[radii.length - 1];
    }
    const step = this.stepAt(way);
    this.#shape.load(this.edges[step]);
    this.#shape.atShare(this.#shareAt(step, way - ways[step]));
    return this.#shape.clearance;
  }

  /** How fast the clearance rises away from the free end on an edge, at its beginning or its end, mm a mm. */
  slopeOn(step: number, way: number): number {
    this.#shape.load(this.edges[step]);
    const slope = this.#shape.slopeAt(this.#shareAt(step, way - this.ways[step]));
    return this.isRising(step) ? slope : -slope;
  }

  /**
   * The place at a distance from the free end; where the clearance falls away from it, the node before, since
   * parts of an edge are counted from its low end.
   */
  placeAt(way: number): BranchPlace {
    const { ways, edges } = this;
    if (way >= this.wholeMm) {
      return { step: edges.length, share: 0 };
    }
    const step = this.stepAt(way);
    if (way <= ways[step] || !this.isRising(step)) {
      return { step, share: 0 };
    }
    this.#shape.load(edges[step]);
    return { step, share: this.#shareAt(step, way - ways[step]) };
  }

  /** The edge on which a way ends. */
  stepAt(way: number): number {
    return stepAtWay(this.ways, way);
  }

  /** Share of the loaded edge, from its low end, at a distance from its nearer end along the branch. */
  #shareAt(step: number, distance: number): number {
    const shape = this.#shape;
    const whole = this.ways[step + 1] - this.ways[step];
    if (!(whole > 0)) {
      return 0;
    }
    const isRising = this.isRising(step);
    const wanted = isRising ? distance : whole - distance;
    const first = step === 0 ? this.#firstShare : 0;
    return shareAtLength(shape, first, wanted, whole);
  }
}
