import { type Point, poll, pollStep, UnionFind } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { enteringRadius } from './entering-radius.ts';
import { CORNER, STROKE, type StrokeParts, strokeParts } from './stroke-parts.ts';
import type { StrokePiece } from './stroke-piece.ts';

/** A connected stretch of stroke, or of the taper at its end, that is narrower than a limit. */
export interface NarrowStretch {
  /** Length along the axis, all branches included, mm. */
  readonly lengthMm: number;
  /** The same from end to end: where a stroke ends, the axis ends half its width before. */
  readonly extentMm: number;
  /** Smallest width in the stretch; 0 for a taper that ends in a point. */
  readonly narrowestMm: number;
  /** Where that is, on the axis. */
  readonly atMm: Point;
  readonly kind: 'stroke' | 'taper';
  /** Longest path through the stretch along the axis, `[x0, y0, x1, y1, …]`, open. */
  readonly path: Float64Array;
  /** Width at each point of the path, mm. */
  readonly widths: Float64Array;
  /** The axis edges that it runs along, wholly or in part. */
  readonly edges: readonly number[];
}

/**
 * The stretches where strokes are narrower than `widthLimitMm`, tapers separate from strokes, each ending
 * exactly where the width passes the limit. A width equal to the limit is not narrower. None for an empty
 * region.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * narrowStretches(medialAxis(bar), 6).length; // 1
 * narrowStretches(medialAxis(bar), 5).length; // 0
 *
 * @throws {RangeError} when the limit is negative or not a number
 */
export function narrowStretches(axis: MedialAxis, widthLimitMm: number): readonly NarrowStretch[] {
  return narrowStretchesFrom(axis, widthLimitMm, 0);
}

/** Those of the {@link narrowStretches} that are nowhere narrower than `leastMm`. */
export function narrowStretchesFrom(
  axis: MedialAxis,
  widthLimitMm: number,
  leastMm: number,
): readonly NarrowStretch[] {
  if (!(widthLimitMm >= 0)) {
    throw new RangeError(`widthLimitMm is ${widthLimitMm}; give a number of millimetres, 0 or more`);
  }
  const parts = strokeParts(axis);
  const narrow = { axis, parts, limit: enteringRadius(axis, widthLimitMm / 2) };
  const pieces = narrowPieces(narrow);
  // strokes and tapers that meet at a place are apart
  const groups = new UnionFind(2 * axis.nodeR.length);
  const place = (node: number, isStroke: boolean): number => 2 * parts.same[node] + Number(isStroke);
  for (const { edge, isStroke, isCutBelow, isCutAbove } of pieces) {
    pollStep();
    if (!isCutBelow && !isCutAbove) {
      groups.join(place(axis.edgeFrom[edge], isStroke), place(axis.edgeTo[edge], isStroke));
    }
  }
  const byGroup = new Map<number, NarrowPiece[]>();
  const isTooNarrow = new Set<number>();
  for (const piece of pieces) {
    pollStep();
    const node = piece.isCutBelow ? axis.edgeTo[piece.edge] : axis.edgeFrom[piece.edge];
    // cut off at either end it hangs together with nothing
    const key =
      piece.isCutBelow && piece.isCutAbove ? -1 - piece.edge : groups.find(place(node, piece.isStroke));
    if (2 * piece.clearance < leastMm) {
      isTooNarrow.add(key);
    }
    const list = byGroup.get(key);
    if (list === undefined) {
      byGroup.set(key, [piece]);
    } else {
      list.push(piece);
    }
  }
  for (const key of isTooNarrow) {
    byGroup.delete(key);
  }
  return Array.from(byGroup.values(), (some) => {
    poll();
    return stretchOf(narrow, some);
  });
}

/** The axis with its parts, and the clearance below which it is narrow. */
interface Narrow {
  readonly axis: MedialAxis;
  readonly parts: StrokeParts;
  readonly limit: number;
}

/** A piece with its length along the axis and its clearance at its beginning, mm. */
interface NarrowPiece extends StrokePiece {
  readonly length: number;
  readonly clearance: number;
}

function narrowPieces({ axis, parts, limit }: Narrow): NarrowPiece[] {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { part, start, strokeStart, end, length } = parts;
  const shape = new AxisEdge(axis);
  const pieces: NarrowPiece[] = [];
  const push = ({ edge, isStroke, from, to, isCutBelow, isCutAbove }: StrokePiece): void => {
    shape.atShare(from);
    const { clearance } = shape;
    const length = shape.lengthBetween(from, to);
    // no spreading: there is one for every edge
    pieces.push({ edge, isStroke, from, to, isCutBelow, isCutAbove, length, clearance });
  };
  for (let edge = 0; edge < part.length; edge++) {
    pollStep();
    const low = nodeR[edgeFrom[edge]];
    if (part[edge] === CORNER || low >= limit) {
      continue;
    }
    const isStroke = part[edge] === STROKE;
    const isLimited = nodeR[edgeTo[edge]] >= limit || end[edge] < 1;
    const isSplit = isStroke && strokeStart[edge] > start[edge];
    if (start[edge] === 0 && !isLimited && !isSplit) {
      pieces.push({
        edge,
        isStroke,
        from: 0,
        to: 1,
        isCutBelow: false,
        isCutAbove: false,
        length: length[edge],
        clearance: low,
      });
      continue;
    }
    shape.load(edge);
    const top = Math.min(end[edge], shape.shareOf(limit));
    const split = isSplit ? strokeStart[edge] : isStroke ? start[edge] : 1;
    if (split > start[edge] && isNarrowAt(shape, start[edge], limit)) {
      const to = Math.min(split, top);
      push({
        edge,
        isStroke: false,
        from: start[edge],
        to,
        isCutBelow: false,
        isCutAbove: isSplit || isLimited,
      });
    }
    if (isStroke && isNarrowAt(shape, split, limit)) {
      push({ edge, isStroke: true, from: split, to: top, isCutBelow: isSplit, isCutAbove: isLimited });
    }
  }
  return pieces;
}

/** Whether the loaded edge is narrower than the limit at a share from its low end. */
function isNarrowAt(shape: AxisEdge, share: number, limit: number): boolean {
  if (share === 0) {
    return true;
  }
  shape.atShare(share);
  return shape.clearance < limit;
}

function stretchOf(narrow: Narrow, pieces: readonly NarrowPiece[]): NarrowStretch {
  const { axis } = narrow;
  const { degree, same } = narrow.parts;
  let lengthMm = 0;
  let endsMm = 0;
  let narrowest = pieces[0];
  for (const piece of pieces) {
    pollStep();
    const { edge, length, clearance, isCutBelow, isCutAbove } = piece;
    const top = axis.edgeTo[edge];
    lengthMm += length;
    endsMm += !isCutBelow && degree[same[axis.edgeFrom[edge]]] === 1 ? clearance : 0;
    endsMm += !isCutAbove && degree[same[top]] === 1 ? axis.nodeR[top] : 0;
    narrowest = clearance < narrowest.clearance ? piece : narrowest;
  }
  // most are only counted or measured, and their way is as long to find as all the rest
  let way: LongestWay | null = null;
  const longest = (): LongestWay => {
    way ??= longestWay(narrow, pieces);
    return way;
  };
  return {
    lengthMm,
    extentMm: lengthMm + endsMm,
    narrowestMm: 2 * narrowest.clearance,
    atMm: placeOf(axis, narrowest),
    kind: pieces[0].isStroke ? 'stroke' : 'taper',
    edges: pieces.map(({ edge }) => edge),
    get path() {
      return longest().path;
    },
    get widths() {
      return longest().widths;
    },
  };
}

/** The beginning of a piece. */
function placeOf(axis: MedialAxis, { edge, from }: StrokePiece): Point {
  const { originX, originY } = axis.boundary;
  const shape = new AxisEdge(axis);
  shape.load(edge);
  shape.atShare(from);
  return [shape.x + originX, shape.y + originY];
}

type LongestWay = Pick<NarrowStretch, 'path' | 'widths'>;

/** The longest path through the pieces, as a tree: each loop is opened at one place. */
function longestWay(narrow: Narrow, pieces: readonly NarrowPiece[]): LongestWay {
  const { axis } = narrow;
  const tree = new PieceTree(narrow, pieces);
  const far = tree.farthest(tree.first);
  const end = tree.farthest(far);
  const shape = new AxisEdge(axis);
  const { originX, originY } = axis.boundary;
  const path: number[] = [];
  const widths: number[] = [];
  const push = (share: number): void => {
    shape.atShare(share);
    path.push(shape.x + originX, shape.y + originY);
    widths.push(2 * shape.clearance);
  };
  // from the end back to the start of the search
  for (let at = end; at !== far; at = tree.before(at)) {
    const piece = tree.pieceTo(at);
    const isDown = tree.leadsDown(at);
    shape.load(piece.edge);
    push(isDown ? piece.to : piece.from);
    push((piece.from + piece.to) / 2);
    if (tree.before(at) === far) {
      push(isDown ? piece.from : piece.to);
    }
  }
  return { path: Float64Array.from(path), widths: Float64Array.from(widths) };
}

/** Pieces that join places, numbered from 0, without those that would close a loop. Where a piece is cut off, that end is a place of its own. */
class PieceTree {
  readonly #pieces: readonly NarrowPiece[];
  /** Places at the low and at the high end of each piece. */
  readonly #low: Int32Array;
  readonly #high: Int32Array;
  /** Pieces at each place: those of place p are `#at[#firstAt[p]]` up to before `#at[#firstAt[p + 1]]`. */
  readonly #firstAt: Int32Array;
  readonly #at: Int32Array;
  /** Of the last search: the way to each place, -1 where none leads, and the piece by which it does. */
  readonly #way: Float64Array;
  readonly #cameBy: Int32Array;
  /** A place that a piece leads on from; 0 where none does. */
  readonly first: number = 0;

  constructor({ axis, parts }: Narrow, pieces: readonly NarrowPiece[]) {
    const names = new Map<number, number>();
    const nameOf = (place: number): number => {
      const name = names.get(place) ?? names.size;
      names.set(place, name);
      return name;
    };
    this.#pieces = pieces;
    this.#low = new Int32Array(pieces.length);
    this.#high = new Int32Array(pieces.length);
    for (const [k, { edge, isCutBelow, isCutAbove }] of pieces.entries()) {
      pollStep();
      this.#low[k] = nameOf(isCutBelow ? -1 - 2 * k : parts.same[axis.edgeFrom[edge]]);
      this.#high[k] = nameOf(isCutAbove ? -2 - 2 * k : parts.same[axis.edgeTo[edge]]);
    }
    const count = names.size;
    const sets = new UnionFind(count);
    const joining = Int32Array.from(pieces.keys()).filter((k) => sets.join(this.#low[k], this.#high[k]));
    this.first = joining.length > 0 ? this.#low[joining[0]] : 0;
    this.#firstAt = new Int32Array(count + 1);
    for (const k of joining) {
      pollStep();
      this.#firstAt[this.#low[k] + 1]++;
      this.#firstAt[this.#high[k] + 1]++;
    }
    for (let place = 0; place < count; place++) {
      this.#firstAt[place + 1] += this.#firstAt[place];
    }
    const next = this.#firstAt.slice();
    this.#at = new Int32Array(2 * joining.length);
    for (const k of joining) {
      pollStep();
      this.#at[next[this.#low[k]]++] = k;
      this.#at[next[this.#high[k]]++] = k;
    }
    this.#way = new Float64Array(count);
    this.#cameBy = new Int32Array(count);
  }

  /** The place farthest along the tree from a start. */
  farthest(start: number): number {
    const way = this.#way.fill(-1);
    way[start] = 0;
    const stack = [start];
    let place = start;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      pollStep();
      if (way[at] > way[place]) {
        place = at;
      }
      for (let i = this.#firstAt[at]; i < this.#firstAt[at + 1]; i++) {
        const k = this.#at[i];
        const to = this.#low[k] === at ? this.#high[k] : this.#low[k];
        if (way[to] < 0) {
          way[to] = way[at] + this.#pieces[k].length;
          this.#cameBy[to] = k;
          stack.push(to);
        }
      }
    }
    return place;
  }

  /** The piece by which the last search came to a place. */
  pieceTo(place: number): NarrowPiece {
    return this.#pieces[this.#cameBy[place]];
  }

  /** The place that it came from, which lies at the low end of that piece if it leads down. */
  before(place: number): number {
    const k = this.#cameBy[place];
    return this.#low[k] === place ? this.#high[k] : this.#low[k];
  }

  leadsDown(place: number): boolean {
    return this.#high[this.#cameBy[place]] === place;
  }
}
