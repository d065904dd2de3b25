/** The linked graph of the axis; `MedialAxis` says what the arrays hold. */
export type AxisGraph = Omit<GrowingGraph, 'addNode' | 'addEdge' | 'leadTo'>;

/**
 * The axis while it grows, its nodes and edges counted beforehand. Whoever ends an edge sets `edgeTo` and
 * `nextHalf`. Half-edge 2e goes up edge e, 2e + 1 down.
 */
export class GrowingGraph {
  readonly nodeX: Float64Array;
  readonly nodeY: Float64Array;
  readonly nodeR: Float64Array;
  readonly edgeFrom: Int32Array;
  readonly edgeTo: Int32Array;
  readonly edgeLeft: Int32Array;
  readonly edgeRight: Int32Array;
  readonly nextHalf: Int32Array;
  /** How many of the first nodes are bottlenecks. */
  readonly bottleneckCount: number;
  #nodeCount = 0;
  #edgeCount = 0;

  constructor(nodeCount: number, edgeCount: number, bottleneckCount: number) {
    this.bottleneckCount = bottleneckCount;
    this.nodeX = new Float64Array(nodeCount);
    this.nodeY = new Float64Array(nodeCount);
    this.nodeR = new Float64Array(nodeCount);
    this.edgeFrom = new Int32Array(edgeCount);
    this.edgeTo = new Int32Array(edgeCount);
    this.edgeLeft = new Int32Array(edgeCount);
    this.edgeRight = new Int32Array(edgeCount);
    this.nextHalf = new Int32Array(2 * edgeCount);
  }

  /** Adds a node; its index. */
  addNode(x: number, y: number, r: number): number {
    const node = this.#nodeCount++;
    this.nodeX[node] = x;
    this.nodeY[node] = y;
    this.nodeR[node] = r;
    return node;
  }

  /** Adds an edge that rises from a node between two sites; its half-edge up. */
  addEdge(from: number, left: number, right: number): number {
    const e = this.#edgeCount++;
    this.edgeFrom[e] = from;
    this.edgeLeft[e] = left;
    this.edgeRight[e] = right;
    return 2 * e;
  }

  /** Makes a half-edge lead to a node. */
  leadTo(half: number, node: number): void {
    if ((half & 1) === 0) {
      this.edgeTo[half >> 1] = node;
    } else {
      this.edgeFrom[half >> 1] = node;
    }
  }
}
