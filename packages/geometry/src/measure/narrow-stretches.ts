import { type Point, UnionFind } from '@pourproof/plane';
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
    if (!isCutBelow && !isCutAbove) {
      groups.join(place(axis.edgeFrom[edge], isStroke), place(axis.edgeTo[edge], isStroke));
    }
  }
  const byGroup = new Map<number, StrokePiece[]>();
  for (const piece of pieces) {
    const node = piece.isCutBelow ? axis.edgeTo[piece.edge] : axis.edgeFrom[piece.edge];
    // cut off at either end it hangs together with nothing
    const key =
      piece.isCutBelow && piece.isCutAbove ? -1 - piece.edge : groups.find(place(node, piece.isStroke));
    const list = byGroup.get(key);
    if (list === undefined) {
      byGroup.set(key, [piece]);
    } else {
      list.push(piece);
    }
  }
  return Array.from(byGroup.values(), (some) => stretchOf(narrow, some));
}

/** The axis with its parts, and the clearance below which it is narrow. */
interface Narrow {
  readonly axis: MedialAxis;
  readonly parts: StrokeParts;
  readonly limit: number;
}

function narrowPieces({ axis, parts, limit }: Narrow): StrokePiece[] {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { part, start, strokeStart } = parts;
  const shape = new AxisEdge(axis);
  const pieces: StrokePiece[] = [];
  for (let edge = 0; edge < part.length; edge++) {
    if (part[edge] === CORNER || nodeR[edgeFrom[edge]] >= limit) {
      continue;
    }
    shape.load(edge);
    const isLimited = nodeR[edgeTo[edge]] >= limit;
    const top = shape.shareOf(limit);
    const isSplit = part[edge] === STROKE && strokeStart[edge] > start[edge];
    const split = isSplit ? strokeStart[edge] : part[edge] === STROKE ? start[edge] : 1;
    if (split > start[edge] && isNarrowAt(shape, start[edge], limit)) {
      const to = Math.min(split, top);
      const isCutAbove = isSplit || isLimited;
      pieces.push({ edge, isStroke: false, from: start[edge], to, isCutBelow: false, isCutAbove });
    }
    if (part[edge] === STROKE && isNarrowAt(shape, split, limit)) {
      pieces.push({ edge, isStroke: true, from: split, to: top, isCutBelow: isSplit, isCutAbove: isLimited });
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

function stretchOf(narrow: Narrow, pieces: readonly StrokePiece[]): NarrowStretch {
  const { axis } = narrow;
  const { degree, same } = narrow.parts;
  const { originX, originY } = axis.boundary;
  const shape = new AxisEdge(axis);
  let lengthMm = 0;
  let endsMm = 0;
  let least = Infinity;
  let atMm: Point = [0, 0];
  for (const { edge, from, to, isCutBelow, isCutAbove } of pieces) {
    shape.load(edge);
    lengthMm += shape.lengthBetween(from, to);
    shape.atShare(from);
    const top = axis.edgeTo[edge];
    endsMm += !isCutBelow && degree[same[axis.edgeFrom[edge]]] === 1 ? shape.clearance : 0;
    endsMm += !isCutAbove && degree[same[top]] === 1 ? axis.nodeR[top] : 0;
    if (shape.clearance < least) {
      least = shape.clearance;
      atMm = [shape.x + originX, shape.y + originY];
    }
  }
  const { path, widths } = longestWay(narrow, pieces);
  return {
    lengthMm,
    extentMm: lengthMm + endsMm,
    narrowestMm: 2 * least,
    atMm,
    kind: pieces[0].isStroke ? 'stroke' : 'taper',
    path,
    widths,
    edges: pieces.map(({ edge }) => edge),
  };
}

interface Link {
  readonly piece: StrokePiece;
  readonly to: number;
  /** Whether it leads to the low end of the piece. */
  readonly isDown: boolean;
  readonly length: number;
}

/** The longest path through the pieces, as a tree: each loop is opened at one place. */
function longestWay(
  narrow: Narrow,
  pieces: readonly StrokePiece[],
): { path: Float64Array; widths: Float64Array } {
  const { axis } = narrow;
  const links = linkTree(narrow, pieces);
  const [first] = links.keys();
  const far = farthest(links, first ?? 0).node;
  const { node: end, cameBy } = farthest(links, far);
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
  for (let at = end, link = cameBy.get(at); link !== undefined; at = link.to, link = cameBy.get(at)) {
    const { piece, isDown } = link;
    shape.load(piece.edge);
    push(isDown ? piece.to : piece.from);
    push((piece.from + piece.to) / 2);
    if (cameBy.get(link.to) === undefined) {
      push(isDown ? piece.from : piece.to);
    }
  }
  return { path: Float64Array.from(path), widths: Float64Array.from(widths) };
}

/** Links of each place; where a piece is cut off, that end is a place of its own, below 0. */
function linkTree({ axis, parts }: Narrow, pieces: readonly StrokePiece[]): Map<number, Link[]> {
  const shape = new AxisEdge(axis);
  const links = new Map<number, Link[]>();
  const ends = pieces.map(({ edge, isCutBelow, isCutAbove }, k) => [
    isCutBelow ? -1 - 2 * k : parts.same[axis.edgeFrom[edge]],
    isCutAbove ? -2 - 2 * k : parts.same[axis.edgeTo[edge]],
  ]);
  const names = new Map<number, number>();
  for (const place of ends.flat()) {
    names.set(place, names.get(place) ?? names.size);
  }
  const tree = new UnionFind(names.size);
  const add = (at: number, link: Link): void => {
    const list = links.get(at);
    if (list === undefined) {
      links.set(at, [link]);
    } else {
      list.push(link);
    }
  };
  for (const [k, piece] of pieces.entries()) {
    const [low, high] = ends[k];
    if (tree.join(names.get(low) ?? 0, names.get(high) ?? 0)) {
      shape.load(piece.edge);
      const length = shape.lengthBetween(piece.from, piece.to);
      add(low, { piece, to: high, isDown: false, length });
      add(high, { piece, to: low, isDown: true, length });
    }
  }
  return links;
}

/** The node farthest along the tree from a start, and the link by which each node leads back to it. */
function farthest(links: Map<number, Link[]>, start: number): { node: number; cameBy: Map<number, Link> } {
  const cameBy = new Map<number, Link>();
  const distance = new Map([[start, 0]]);
  const stack = [start];
  let node = start;
  for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
    const way = distance.get(at) ?? 0;
    if (way > (distance.get(node) ?? 0)) {
      node = at;
    }
    for (const link of links.get(at) ?? []) {
      if (!distance.has(link.to)) {
        distance.set(link.to, way + link.length);
        cameBy.set(link.to, { ...link, to: at, isDown: !link.isDown });
        stack.push(link.to);
      }
    }
  }
  return { node, cameBy };
}
