import { type Point, UnionFind } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { enteringRadius } from './entering-radius.ts';
import { CORNER, STROKE, strokeParts } from './stroke-parts.ts';

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
  const { part, start, degree } = strokeParts(axis);
  const limit = enteringRadius(axis, widthLimitMm / 2);
  const { edgeFrom, edgeTo, nodeR } = axis;
  const groups = new UnionFind(2 * nodeR.length);
  const chosen: number[] = [];
  const shape = new AxisEdge(axis);
  for (let e = 0; e < part.length; e++) {
    if (part[e] !== CORNER && nodeR[edgeFrom[e]] < limit && isBelowAtStart(shape, e, start, limit)) {
      chosen.push(e);
      if (nodeR[edgeTo[e]] < limit) {
        groups.join(2 * edgeFrom[e] + part[e] - 1, 2 * edgeTo[e] + part[e] - 1);
      }
    }
  }
  const byGroup = new Map<number, number[]>();
  for (const e of chosen) {
    const key = groups.find(2 * edgeFrom[e] + part[e] - 1);
    const list = byGroup.get(key);
    if (list === undefined) {
      byGroup.set(key, [e]);
    } else {
      list.push(e);
    }
  }
  return [...byGroup.values()].map((edges) =>
    stretchOf({ axis, start, limit, degree }, edges, part[edges[0]] === STROKE),
  );
}

/** Whether the edge is narrower than the limit where its stroke begins. */
function isBelowAtStart(shape: AxisEdge, e: number, start: Float64Array, limit: number): boolean {
  if (start[e] === 0) {
    return true;
  }
  shape.load(e);
  shape.atShare(start[e]);
  return shape.clearance < limit;
}

/**
 * The axis, the share of each edge at which its stroke begins, and the clearance below which it is narrow.
 */
interface Narrow {
  readonly axis: MedialAxis;
  readonly start: Float64Array;
  readonly limit: number;
  readonly degree: Uint8Array;
}

function stretchOf(narrow: Narrow, edges: readonly number[], isStroke: boolean): NarrowStretch {
  const { axis, start, limit, degree } = narrow;
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { originX, originY } = axis.boundary;
  const shape = new AxisEdge(axis);
  let lengthMm = 0;
  let endsMm = 0;
  let least = Infinity;
  let atMm: Point = [0, 0];
  for (const e of edges) {
    shape.load(e);
    lengthMm += shape.lengthBetween(start[e], shape.shareOf(limit));
    shape.atShare(start[e]);
    endsMm += degree[edgeFrom[e]] === 1 ? shape.clearance : 0;
    endsMm += degree[edgeTo[e]] === 1 && nodeR[edgeTo[e]] < limit ? nodeR[edgeTo[e]] : 0;
    if (shape.clearance < least) {
      least = shape.clearance;
      atMm = [shape.x + originX, shape.y + originY];
    }
  }
  const { path, widths } = longestWay(narrow, edges);
  return {
    lengthMm,
    extentMm: lengthMm + endsMm,
    narrowestMm: 2 * least,
    atMm,
    kind: isStroke ? 'stroke' : 'taper',
    path,
    widths,
  };
}

interface Link {
  readonly edge: number;
  readonly to: number;
  readonly length: number;
}

/** The longest path through the edges, as a tree: each loop is opened at one place. */
function longestWay(narrow: Narrow, edges: readonly number[]): { path: Float64Array; widths: Float64Array } {
  const { axis, start, limit } = narrow;
  const links = linkTree(narrow, edges);
  const [first] = links.keys();
  const far = farthest(links, first ?? 0).node;
  const { node: end, cameBy } = farthest(links, far);
  const shape = new AxisEdge(axis);
  const { boundary, edgeFrom } = axis;
  const path: number[] = [];
  const widths: number[] = [];
  const push = (): void => {
    path.push(shape.x + boundary.originX, shape.y + boundary.originY);
    widths.push(2 * shape.clearance);
  };
  // from the end back to the start of the search
  for (let at = end, link = cameBy.get(at); link !== undefined; at = link.to, link = cameBy.get(at)) {
    shape.load(link.edge);
    const top = shape.shareOf(limit);
    const bottom = start[link.edge];
    const isDown = link.to === edgeFrom[link.edge];
    for (const share of [isDown ? top : bottom, (bottom + top) / 2]) {
      shape.atShare(share);
      push();
    }
    if (cameBy.get(link.to) === undefined) {
      shape.atShare(isDown ? bottom : top);
      push();
    }
  }
  return { path: Float64Array.from(path), widths: Float64Array.from(widths) };
}

/** Links of each node; where an edge is cut off at the limit, that end is a node of its own, -1 - edge. */
function linkTree({ axis, start, limit }: Narrow, edges: readonly number[]): Map<number, Link[]> {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const shape = new AxisEdge(axis);
  const links = new Map<number, Link[]>();
  const names = new Map<number, number>();
  for (const node of edges.flatMap((e) => [edgeFrom[e], edgeTo[e]])) {
    names.set(node, names.get(node) ?? names.size);
  }
  const tree = new UnionFind(names.size);
  for (const e of edges) {
    const from = edgeFrom[e];
    const to = nodeR[edgeTo[e]] < limit ? edgeTo[e] : -1 - e;
    if (to >= 0) {
      if (!tree.join(names.get(from) ?? 0, names.get(to) ?? 0)) {
        continue;
      }
    }
    shape.load(e);
    const length = shape.lengthBetween(start[e], shape.shareOf(limit));
    links.set(from, [...(links.get(from) ?? []), { edge: e, to, length }]);
    links.set(to, [...(links.get(to) ?? []), { edge: e, to: from, length }]);
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
        cameBy.set(link.to, { edge: link.edge, to: at, length: link.length });
        stack.push(link.to);
      }
    }
  }
  return { node, cameBy };
}
