import type { OutlineGap, Point } from '@pourproof/plane';
import { CellHash, pointNodes } from './point-nodes.ts';

/**
 * Ends within this distance, in mm, are one point: 1 µm, what numbers with few decimals leave (from memory).
 */
export const SNAP_MM = 0.001;

/** A gap as wide as a typed tolerance is within it: what rounding of decimals leaves, mm. */
const TYPED_TOL_MM = 1e-6;

/** Most loose ends, or lines, considered around one of them: more within one tolerance are a tangle, not a gap or a double. */
const MAX_NEIGHBOURS = 64;

/** A polyline `[x0,y0,x1,y1,…]` in mm with two ends. */
export type Line = readonly number[];

/** A place where one drawn piece lies on another. */
export interface Doubled {
  readonly atMm: Point;
  readonly piece: number;
}

/** Lines that meet in nodes. Half-edge 2i leaves the start of line i, half-edge 2i + 1 its end. */
export interface ChainGraph {
  readonly lines: readonly Line[];
  /** Drawn piece that each line comes from. */
  readonly pieceOf: readonly number[];
  /** Node that each half-edge leaves. */
  readonly node: Int32Array;
  readonly nodeCount: number;
  /** 1 for lines in use; 0 for those that lie on another. */
  readonly alive: Uint8Array;
  /** Gaps that were closed, the smallest first. */
  readonly gaps: readonly OutlineGap[];
  /** Index of the gap that was closed at a node. */
  readonly gapAt: ReadonlyMap<number, number>;
  readonly doubled: readonly Doubled[];
}

/** Finds which line ends are one point, drops lines that lie on others, and pairs loose ends across gaps. */
export function chainGraph(
  lines: readonly Line[],
  pieceOf: readonly number[],
  joinToleranceMm: number,
): ChainGraph {
  const ends = new Float64Array(4 * lines.length);
  lines.forEach((line, i) => {
    ends[4 * i] = line[0];
    ends[4 * i + 1] = line[1];
    ends[4 * i + 2] = line[line.length - 2];
    ends[4 * i + 3] = line[line.length - 1];
  });
  const { node, first } = pointNodes(ends, SNAP_MM);
  const alive = new Uint8Array(lines.length).fill(1);
  const doubled = dropDoubles(lines, pieceOf, node, first.length, alive);
  const closed = closeGaps(lines, ends, node, first.length, alive, joinToleranceMm);
  return { lines, pieceOf, node, nodeCount: first.length, alive, ...closed, doubled };
}

/** Marks lines that join the same nodes along the same path as another, and those without length. */
function dropDoubles(
  lines: readonly Line[],
  pieceOf: readonly number[],
  node: Int32Array,
  nodeCount: number,
  alive: Uint8Array,
): Doubled[] {
  const groups = new Map<number, number[]>();
  const firstOf = new Map<number, number>();
  for (let i = 0; i < lines.length; i++) {
    const a = node[2 * i];
    const b = node[2 * i + 1];
    const key = Math.min(a, b) * nodeCount + Math.max(a, b);
    const before = firstOf.get(key);
    if (before === undefined) {
      firstOf.set(key, i);
    } else {
      const group = groups.get(key) ?? [before];
      group.push(i);
      groups.set(key, group);
    }
  }
  const doubled: Doubled[] = [];
  for (const group of groups.values()) {
    for (const { i, atMm } of twinsWithin(group, lines)) {
      alive[i] = 0;
      doubled.push({ atMm, piece: pieceOf[i] });
    }
  }
  for (let i = 0; i < lines.length; i++) {
    if (node[2 * i] === node[2 * i + 1] && pathLength(lines[i]) <= 2 * SNAP_MM) {
      alive[i] = 0;
    }
  }
  return doubled;
}

/** The lines of a group that follow the same path as an earlier one. */
function* twinsWithin(
  group: readonly number[],
  lines: readonly Line[],
): Generator<{ i: number; atMm: Point }> {
  const ways = group.map((i) => {
    const line = lines[i];
    const length = pathLength(line);
    const [x, y] = pointAlong(line, length / 2);
    // sorted along a slanted direction, so that neither rows nor columns fall together
    return { i, length, x, y, rank: 0.8 * x + 0.6 * y };
  });
  ways.sort((a, b) => a.rank - b.rank);
  const slack = 4 * SNAP_MM;
  // copies are compared with the first of them alone: thousands may lie on one another
  const kept: typeof ways = [];
  for (const way of ways) {
    const first = Math.max(0, kept.length - MAX_NEIGHBOURS);
    let isTwin = false;
    for (let j = kept.length - 1; j >= first && !isTwin; j--) {
      const other = kept[j];
      if (way.rank - other.rank > slack) {
        break;
      }
      const near = Math.hypot(way.x - other.x, way.y - other.y) <= slack;
      isTwin = near && Math.abs(way.length - other.length) <= slack;
    }
    if (isTwin) {
      yield { i: way.i, atMm: [way.x, way.y] };
    } else {
      kept.push(way);
    }
  }
}

/** Length of a polyline. */
function pathLength(coords: Line): number {
  let sum = 0;
  for (let i = 2; i < coords.length; i += 2) {
    sum += Math.hypot(coords[i] - coords[i - 2], coords[i + 1] - coords[i - 1]);
  }
  return sum;
}

function pointAlong(coords: Line, distance: number): Point {
  let left = distance;
  for (let i = 2; i < coords.length; i += 2) {
    const [ax, ay] = [coords[i - 2], coords[i - 1]];
    const [bx, by] = [coords[i], coords[i + 1]];
    const length = Math.hypot(bx - ax, by - ay);
    if (length >= left && length > 0) {
      const t = left / length;
      return [ax + t * (bx - ax), ay + t * (by - ay)];
    }
    left -= length;
  }
  return [coords[coords.length - 2], coords[coords.length - 1]];
}

/** Joins pairs of loose ends that are close enough into one node, closest first. */
function closeGaps(
  lines: readonly Line[],
  ends: Float64Array,
  node: Int32Array,
  nodeCount: number,
  alive: Uint8Array,
  toleranceMm: number,
): Pick<ChainGraph, 'gaps' | 'gapAt'> {
  const loose = looseHalfEdges(node, nodeCount, alive);
  const tolerance = toleranceMm + TYPED_TOL_MM;
  const cells = new CellHash(loose.length, tolerance);
  const pairs: { a: number; b: number; gap: number }[] = [];
  for (const h of loose) {
    const x = ends[2 * h];
    const y = ends[2 * h + 1];
    let seen = 0;
    cells.near(x, y, (g) => {
      const gap = Math.hypot(ends[2 * g] - x, ends[2 * g + 1] - y);
      if (gap <= tolerance && !isStub(lines, g, h, gap)) {
        pairs.push({ a: g, b: h, gap });
      }
      return ++seen === MAX_NEIGHBOURS;
    });
    cells.add(x, y, h);
  }
  pairs.sort((p, q) => p.gap - q.gap);
  const taken = new Set<number>();
  const gaps: OutlineGap[] = [];
  const gapAt = new Map<number, number>();
  const endOf = (h: number): Point => [ends[2 * h], ends[2 * h + 1]];
  for (const { a, b, gap } of pairs) {
    if (taken.has(a) || taken.has(b)) {
      continue;
    }
    taken.add(a).add(b);
    node[b] = node[a];
    gapAt.set(node[a], gaps.length);
    gaps.push({ fromMm: endOf(a), toMm: endOf(b), widthMm: gap });
  }
  return { gaps, gapAt };
}

function looseHalfEdges(node: Int32Array, nodeCount: number, alive: Uint8Array): number[] {
  const degree = new Int32Array(nodeCount);
  for (let h = 0; h < node.length; h++) {
    degree[node[h]] = degree[node[h]] + alive[h >> 1];
  }
  const loose: number[] = [];
  for (let h = 0; h < node.length; h++) {
    if (alive[h >> 1] === 1 && degree[node[h]] === 1) {
      loose.push(h);
    }
  }
  return loose;
}

/**
 * Whether two ends are those of one line that is hardly longer than the gap between them: closing it would
 * enclose nothing.
 */
function isStub(lines: readonly Line[], g: number, h: number, gap: number): boolean {
  return g >> 1 === h >> 1 && pathLength(lines[g >> 1]) <= 4 * gap;
}
