import { pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { axisParts } from './axis-parts.ts';
import { CORNER, STROKE, type StrokeParts, strokeParts } from './stroke-parts.ts';
import type { StrokePiece } from './stroke-piece.ts';

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
  const { same, ...parts } = strokeParts(axis);
  const pieces = piecesOf(parts);
  const partOf = axisParts(axis);
  const nodeAt = (k: number, isHigh: boolean): number => {
    const { edge, isCutBelow, isCutAbove } = pieces[k];
    return (isHigh ? isCutAbove : isCutBelow) ? -1 : same[(isHigh ? axis.edgeTo : axis.edgeFrom)[edge]];
  };
  // the first two pieces at each place
  const first = new Int32Array(axis.nodeR.length).fill(-1);
  const second = new Int32Array(axis.nodeR.length).fill(-1);
  const degree = new Uint8Array(axis.nodeR.length);
  for (let k = 0; k < pieces.length; k++) {
    pollStep();
    for (const node of [nodeAt(k, false), nodeAt(k, true)]) {
      if (node >= 0) {
        degree[node] = Math.min(3, degree[node] + 1);
        (first[node] < 0 ? first : second)[node] = k;
      }
    }
  }
  /** The piece that continues piece k through its end; -1 at ends, at joins and where a stroke becomes a taper. */
  const onward = (k: number, isHigh: boolean): number => {
    const node = nodeAt(k, isHigh);
    if (node < 0 || degree[node] !== 2) {
      return -1;
    }
    const other = first[node] === k ? second[node] : first[node];
    return pieces[other].isStroke === pieces[k].isStroke ? other : -1;
  };
  const seen = new Uint8Array(pieces.length);
  const lines: StrokeLine[] = [];
  const pen = new LinePen(axis);
  const follow = (start: number, isUpFirst: boolean): void => {
    let isUp = isUpFirst;
    for (let k = start; k >= 0 && seen[k] === 0; ) {
      pollStep();
      seen[k] = 1;
      pen.draw(pieces[k], isUp);
      const next = onward(k, isUp);
      isUp = next >= 0 && nodeAt(next, false) === nodeAt(k, isUp);
      k = next;
    }
    const { edge, isStroke } = pieces[start];
    lines.push(pen.lift(isStroke ? 'stroke' : 'taper', partOf[axis.edgeFrom[edge]]));
  };
  for (let k = 0; k < pieces.length; k++) {
    pollStep();
    for (const isHigh of [false, true]) {
      if (seen[k] === 0 && onward(k, isHigh) < 0) {
        follow(k, !isHigh);
      }
    }
  }
  // only closed loops are left
  for (let k = 0; k < pieces.length; k++) {
    pollStep();
    if (seen[k] === 0) {
      follow(k, true);
    }
  }
  return lines;
}

/** Edges as a whole, corners at their beginning included, but parted where a taper ends within them. */
function piecesOf({ part, start, strokeStart, end }: Omit<StrokeParts, 'same'>): StrokePiece[] {
  const pieces: StrokePiece[] = [];
  for (let edge = 0; edge < part.length; edge++) {
    pollStep();
    const split = strokeStart[edge];
    if (part[edge] === CORNER) {
      continue;
    }
    const isSplit = part[edge] === STROKE && split > start[edge];
    if (isSplit) {
      pieces.push({ edge, isStroke: false, from: 0, to: split, isCutBelow: false, isCutAbove: true });
    }
    const from = isSplit ? split : 0;
    pieces.push({
      edge,
      isStroke: part[edge] === STROKE,
      from,
      to: end[edge],
      isCutBelow: isSplit,
      isCutAbove: end[edge] < 1,
    });
  }
  return pieces;
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

  draw({ edge: e, from, to }: StrokePiece, isUp: boolean): void {
    const edge = this.#edge;
    edge.load(e);
    const isCurved = edge.kind === 'segment-vertex' || edge.kind === 'vertices';
    const parts = isCurved && edge.lengthBetween(from, to) > STRAIGHT_BELOW_MM ? CURVE_PARTS : 1;
    for (let k = this.#widths.length === 0 ? 0 : 1; k <= parts; k++) {
      edge.atShare(from + (to - from) * (isUp ? k / parts : 1 - k / parts));
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
