import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { axisParts } from './axis-parts.ts';
import { CORNER, strokeParts, TAPER } from './stroke-parts.ts';

/** The centre line of a stroke between two ends or joins. */
export interface StrokeLine {
  readonly kind: 'stroke' | 'taper';
  /** Number of the separate part that it is in. */
  readonly part: number;
  /** `[x0, y0, x1, y1, …]`, open, mm. */
  readonly path: Float64Array;
  /** Width at each point of the path, mm. */
  readonly widths: Float64Array;
}

/**
 * Curved pieces of the axis shorter than this, mm, are drawn straight: their sag is far below the width of
 * any line.
 */
const STRAIGHT_BELOW_MM = 0.1;
/** Straight parts of a longer curved piece. */
const CURVE_PARTS = 4;

/**
 * The centre lines of all strokes and tapers, from join to join, with their widths: for a map of the strokes.
 * Corners are left out. Widths are exact at the points and linear between them where flanks are straight.
 * Linear time.
 */
export function strokeLines(axis: MedialAxis): readonly StrokeLine[] {
  const { part } = strokeParts(axis);
  const { edgeFrom, edgeTo, nodeR } = axis;
  const partOf = axisParts(axis);
  // the first two edges at each node
  const first = new Int32Array(nodeR.length).fill(-1);
  const second = new Int32Array(nodeR.length).fill(-1);
  const degree = new Uint8Array(nodeR.length);
  for (let e = 0; e < part.length; e++) {
    if (part[e] === CORNER) {
      continue;
    }
    for (const node of [edgeFrom[e], edgeTo[e]]) {
      degree[node] = Math.min(3, degree[node] + 1);
      if (first[node] < 0) {
        first[node] = e;
      } else {
        second[node] = e;
      }
    }
  }
  /**
   * The edge that continues edge e through a node; -1 at ends, at joins and where a stroke becomes a taper.
   */
  const onward = (e: number, node: number): number => {
    if (degree[node] !== 2) {
      return -1;
    }
    const other = first[node] === e ? second[node] : first[node];
    return part[other] === part[e] ? other : -1;
  };
  const seen = new Uint8Array(part.length);
  const lines: StrokeLine[] = [];
  const pen = new LinePen(axis);
  const follow = (start: number, from: number): void => {
    let node = from;
    for (let e = start; e >= 0 && seen[e] === 0; ) {
      seen[e] = 1;
      const isUp = edgeFrom[e] === node;
      pen.draw(e, isUp);
      node = isUp ? edgeTo[e] : edgeFrom[e];
      e = onward(e, node);
    }
    lines.push(pen.lift(part[start] === TAPER ? 'taper' : 'stroke', partOf[from]));
  };
  for (let e = 0; e < part.length; e++) {
    for (const node of [edgeFrom[e], edgeTo[e]]) {
      if (part[e] !== CORNER && seen[e] === 0 && onward(e, node) < 0) {
        follow(e, node);
      }
    }
  }
  // only closed loops are left
  for (let e = 0; e < part.length; e++) {
    if (part[e] !== CORNER && seen[e] === 0) {
      follow(e, edgeFrom[e]);
    }
  }
  return lines;
}

/** Collects the points of one line. */
class LinePen {
  readonly #edge: AxisEdge;
  readonly #origin: readonly [number, number];
  #path: number[] = [];
  #widths: number[] = [];

  constructor(axis: MedialAxis) {
    this.#edge = new AxisEdge(axis);
    this.#origin = [axis.boundary.originX, axis.boundary.originY];
  }

  draw(e: number, isUp: boolean): void {
    const edge = this.#edge;
    edge.load(e);
    const isCurved = edge.kind === 'segment-vertex' || edge.kind === 'vertices';
    const parts = isCurved && edge.lengthBetween(0, 1) > STRAIGHT_BELOW_MM ? CURVE_PARTS : 1;
    for (let k = this.#widths.length === 0 ? 0 : 1; k <= parts; k++) {
      edge.atShare(isUp ? k / parts : 1 - k / parts);
      this.#path.push(edge.x + this.#origin[0], edge.y + this.#origin[1]);
      this.#widths.push(2 * edge.clearance);
    }
  }

  lift(kind: StrokeLine['kind'], part: number): StrokeLine {
    const line = { kind, part, path: Float64Array.from(this.#path), widths: Float64Array.from(this.#widths) };
    this.#path = [];
    this.#widths = [];
    return line;
  }
}
