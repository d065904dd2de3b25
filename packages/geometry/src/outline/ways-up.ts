import { AxisEdge } from '../measure/axis-edge.ts';
import { excessBeyondCorner } from '../measure/beyond-corners.ts';
import { CORNER, type StrokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { risingFrom } from './narrow-parts.ts';

/**
 * The ways up the axis. From each edge at most one rises further, so that they run together into trees whose roots are the tops; each edge
 * knows its length up to there, and one edge farther up besides the next (Myers 1983, "An applicative random-access stack"). So where a way of
 * given length ends is found in O(log n). Edges are looked at when they are first asked for, each once.
 */
export class WaysUp {
  readonly axis: MedialAxis;
  readonly strokes: StrokeParts;
  readonly shape: AxisEdge;
  /** The edge that rises from each edge, -1 at a top. */
  readonly #next: Int32Array;
  /** An edge farther up; at a top the edge itself. */
  readonly #jump: Int32Array;
  /** Number of edges up to the top, itself among them; 0 for edges that were not looked at. */
  readonly #count: Int32Array;
  /** Length from the low end of each edge up to the top, mm. */
  readonly #whole: Float64Array;
  /** The edge on which the branch ends that leads up along each edge, as a corner and as a tip. */
  readonly #cornerEnd: Int32Array;
  readonly #tipEnd: Int32Array;

  constructor(axis: MedialAxis, strokes: StrokeParts) {
    this.axis = axis;
    this.strokes = strokes;
    this.shape = new AxisEdge(axis);
    const count = axis.edgeFrom.length;
    this.#next = new Int32Array(count);
    this.#jump = new Int32Array(count);
    this.#count = new Int32Array(count);
    this.#whole = new Float64Array(count);
    this.#cornerEnd = new Int32Array(count);
    this.#tipEnd = new Int32Array(count);
  }

  /** The edge on which a branch ends: of a corner where a stroke begins, of a tip where strokes meet; else the last one before a top. */
  endOf(e: number, isCorner: boolean): number {
    this.#lookAt(e);
    return (isCorner ? this.#cornerEnd : this.#tipEnd)[e];
  }

  /** Length from the low end of edge e to the low end of edge `up` above it, mm. */
  between(e: number, up: number): number {
    return this.#whole[e] - this.#whole[up];
  }

  /** The edge that rises from an edge that was looked at; -1 at a top. */
  next(e: number): number {
    return this.#next[e];
  }

  /** The last edge on the way from e to `end` whose low end lies no farther from that of e than `way`, mm; e itself if none. */
  edgeAt(e: number, end: number, way: number): number {
    const isOn = (up: number): boolean =>
      this.#count[up] >= this.#count[end] && this.#whole[e] - this.#whole[up] <= way;
    let at = e;
    while (at !== end) {
      if (isOn(this.#jump[at])) {
        at = this.#jump[at];
      } else if (isOn(this.#next[at])) {
        at = this.#next[at];
      } else {
        break;
      }
    }
    return at;
  }

  /** Fills in what is known of an edge and all above it. */
  #lookAt(e: number): void {
    const path: number[] = [];
    for (let up = e; up >= 0 && this.#count[up] === 0; up = this.#next[up]) {
      this.#next[up] = risingFrom(this.axis, up);
      path.push(up);
    }
    for (let edge = path.pop(); edge !== undefined; edge = path.pop()) {
      const next = this.#next[edge];
      const length = Math.max(0, this.strokes.length[edge]);
      if (next < 0) {
        this.#count[edge] = 1;
        this.#whole[edge] = length;
        this.#jump[edge] = edge;
        this.#cornerEnd[edge] = edge;
        this.#tipEnd[edge] = edge;
        continue;
      }
      this.#count[edge] = this.#count[next] + 1;
      this.#whole[edge] = this.#whole[next] + length;
      this.#jump[edge] = this.#jumpFrom(next);
      this.#cornerEnd[edge] = this.#endsCorner(edge) ? edge : this.#cornerEnd[next];
      this.#tipEnd[edge] = this.#endsTip(edge) ? edge : this.#tipEnd[next];
    }
  }

  #jumpFrom(next: number): number {
    const first = this.#jump[next];
    const second = this.#jump[first];
    const count = this.#count;
    return count[next] - count[first] === count[first] - count[second] ? second : next;
  }

  #endsCorner(e: number): boolean {
    const { edgeFrom, edgeTo, nodeR } = this.axis;
    const { part, end, reach, length } = this.strokes;
    const way = reach[edgeFrom[e]] + Math.max(0, length[e]);
    const r = nodeR[edgeTo[e]];
    // a steep taper is a corner too
    return (
      part[e] !== CORNER &&
      end[e] === 1 &&
      (excessBeyondCorner(way, r) > 0 || excessBeyondCorner(reach[edgeTo[e]], r) > 0)
    );
  }

  #endsTip(e: number): boolean {
    const { degree, same } = this.strokes;
    return degree[same[this.axis.edgeTo[e]]] > 2;
  }
}
