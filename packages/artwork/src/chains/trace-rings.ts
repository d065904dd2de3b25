import { type Point, ringArea } from '@pourproof/plane';
import { type ChainGraph, type Line, SNAP_MM } from './chain-graph.ts';
import { bridges } from './graph-bridges.ts';
import type { JoinedChains, OpenChain } from './join-chains.ts';

/**
 * Alive half-edges by the node they leave, in one array: those of node v are `list[start[v]]` …
 * `list[start[v + 1] - 1]`.
 */
export interface Stars {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/**
 * Traces the closed outlines of a graph of lines; see `joinChains` for what happens where lines lead nowhere
 * or branch.
 */
export function traceRings(graph: ChainGraph): Pick<JoinedChains, 'rings' | 'open' | 'branches'> {
  const alive = Uint8Array.from(graph.alive);
  const open = stripTails(graph, alive);
  let odd = oddGroups(graph, alive);
  if (odd.nodes.length > 0) {
    for (const line of bridges(graph, starsOf(graph, alive), alive)) {
      alive[line] = 0;
      open.push(linkBetween(graph, line));
    }
    odd = oddGroups(graph, alive);
  }
  const stars = starsOf(graph, alive);
  const next = successors(graph, stars, odd.isOdd);
  const rings: JoinedChains['rings'][number][] = [];
  const used = new Uint8Array(2 * graph.lines.length);
  for (const h of stars.list) {
    const isCell = odd.isOdd[graph.node[h]] === 1;
    // an outline is found from either side of its lines, a cell from its own side only
    if (used[h] === 1) {
      continue;
    }
    const coords: number[] = [];
    const gaps: number[] = [];
    let at = h;
    do {
      const gap = graph.gapAt.get(graph.node[at]);
      if (gap !== undefined) {
        gaps.push(gap);
      }
      used[at] = 1;
      if (!isCell) {
        used[at ^ 1] = 1;
      }
      appendLine(coords, graph.lines[at >> 1], (at & 1) === 1);
      at = next[at];
    } while (at !== h);
    dropRepeatedEnd(coords);
    const area = ringArea(coords);
    // an outline that encloses nothing is kept, for whoever resolves the drawing to tell
    if (area > 0 || (!isCell && coords.length >= 6)) {
      rings.push({ coords, piece: graph.pieceOf[h >> 1], gaps: gaps.map((k) => graph.gaps[k]) });
    }
  }
  return { rings, open, branches: odd.nodes.map((v) => nodePoint(graph, stars, v)) };
}

/** Half-edges of the lines in use, by node. */
export function starsOf(graph: ChainGraph, alive: Uint8Array): Stars {
  const { node, nodeCount } = graph;
  const start = new Int32Array(nodeCount + 1);
  for (let h = 0; h < node.length; h++) {
    const v = node[h] + 1;
    start[v] = start[v] + alive[h >> 1];
  }
  for (let v = 0; v < nodeCount; v++) {
    start[v + 1] = start[v + 1] + start[v];
  }
  const list = new Int32Array(start[nodeCount]);
  const fill = start.slice();
  for (let h = 0; h < node.length; h++) {
    if (alive[h >> 1] === 1) {
      const v = node[h];
      list[fill[v]] = h;
      fill[v] = fill[v] + 1;
    }
  }
  return { start, list };
}

/** Removes lines that lead nowhere, starting at their loose ends, and returns the chains that they make. */
function stripTails(graph: ChainGraph, alive: Uint8Array): OpenChain[] {
  const stars = starsOf(graph, alive);
  const degree = new Int32Array(graph.nodeCount);
  const loose: number[] = [];
  for (let v = 0; v < graph.nodeCount; v++) {
    degree[v] = stars.start[v + 1] - stars.start[v];
    if (degree[v] === 1) {
      loose.push(stars.list[stars.start[v]]);
    }
  }
  const fullDegree = degree.slice();
  const queue = loose.map((h) => graph.node[h]);
  for (let v = queue.pop(); v !== undefined; v = queue.pop()) {
    const h = degree[v] === 1 ? aliveHalfEdge(stars, v, alive) : -1;
    if (h >= 0) {
      const w = graph.node[h ^ 1];
      alive[h >> 1] = 0;
      degree[v] = 0;
      degree[w] = degree[w] - 1;
      if (degree[w] === 1) {
        queue.push(w);
      }
    }
  }
  return openChains(graph, stars, fullDegree, loose);
}

function aliveHalfEdge(stars: Stars, v: number, alive: Uint8Array): number {
  for (let k = stars.start[v]; k < stars.start[v + 1]; k++) {
    const h = stars.list[k];
    if (alive[h >> 1] === 1) {
      return h;
    }
  }
  return -1;
}

/** Follows each loose end to where its chain ends or branches; a chain with two loose ends is listed once. */
function openChains(
  graph: ChainGraph,
  stars: Stars,
  degree: Int32Array,
  loose: readonly number[],
): OpenChain[] {
  const told = new Set<number>();
  const open: OpenChain[] = [];
  for (const start of loose) {
    if (told.has(start)) {
      continue;
    }
    let h = start;
    let w = graph.node[h ^ 1];
    const coords: number[] = [];
    appendLine(coords, graph.lines[h >> 1], (h & 1) === 1);
    while (degree[w] === 2) {
      const from = stars.start[w];
      const [a, b] = [stars.list[from], stars.list[from + 1]];
      h = a === (h ^ 1) ? b : a;
      w = graph.node[h ^ 1];
      appendLine(coords, graph.lines[h >> 1], (h & 1) === 1);
    }
    const bothLoose = degree[w] === 1;
    if (bothLoose) {
      told.add(h ^ 1);
    }
    const atMm = endPoint(graph, start);
    const otherMm = endPoint(graph, h ^ 1);
    const gapMm = bothLoose ? Math.hypot(otherMm[0] - atMm[0], otherMm[1] - atMm[1]) : 0;
    open.push({ atMm, otherMm, gapMm, coords, piece: graph.pieceOf[start >> 1] });
  }
  return open;
}

/** A line that links two figures without being part of an outline. */
function linkBetween(graph: ChainGraph, line: number): OpenChain {
  const piece = graph.pieceOf[line];
  const coords = Array.from(graph.lines[line]);
  return { atMm: endPoint(graph, 2 * line), otherMm: endPoint(graph, 2 * line + 1), gapMm: 0, coords, piece };
}

/** Point that a half-edge leaves. */
function endPoint(graph: ChainGraph, h: number): Point {
  const coords = graph.lines[h >> 1];
  return (h & 1) === 0 ? [coords[0], coords[1]] : [coords[coords.length - 2], coords[coords.length - 1]];
}

function nodePoint(graph: ChainGraph, stars: Stars, v: number): Point {
  return endPoint(graph, stars.list[stars.start[v]]);
}

/** The nodes where an odd number of lines meet, and which nodes hang together with one of those. */
function oddGroups(graph: ChainGraph, alive: Uint8Array): { nodes: number[]; isOdd: Uint8Array } {
  const stars = starsOf(graph, alive);
  const nodes: number[] = [];
  for (let v = 0; v < graph.nodeCount; v++) {
    if (((stars.start[v + 1] - stars.start[v]) & 1) === 1) {
      nodes.push(v);
    }
  }
  const isOdd = new Uint8Array(graph.nodeCount);
  const queue = [...nodes];
  for (let v = queue.pop(); v !== undefined; v = queue.pop()) {
    if (isOdd[v] === 1) {
      continue;
    }
    isOdd[v] = 1;
    for (let k = stars.start[v]; k < stars.start[v + 1]; k++) {
      queue.push(graph.node[stars.list[k] ^ 1]);
    }
  }
  return { nodes, isOdd };
}

/**
 * The half-edge that follows each half-edge. Around an odd node it is the next one clockwise, which walks
 * around cells; elsewhere neighbours by direction are paired, which makes outlines that touch but do not
 * cross.
 */
function successors(graph: ChainGraph, stars: Stars, isOdd: Uint8Array): Int32Array {
  const next = new Int32Array(2 * graph.lines.length).fill(-1);
  for (let v = 0; v < graph.nodeCount; v++) {
    const around = Array.from(stars.list.subarray(stars.start[v], stars.start[v + 1]));
    const count = around.length;
    if (count > 2) {
      sortByDirection(graph, around);
    }
    for (let k = 0; k < count; k++) {
      const leaving = isOdd[v] === 1 ? (k + count - 1) % count : k ^ 1;
      next[around[k] ^ 1] = around[leaving];
    }
  }
  return next;
}

function sortByDirection(graph: ChainGraph, around: number[]): void {
  const leaving = around.map((h) => ({ h, angle: direction(graph, h) }));
  leaving.sort((a, b) => a.angle - b.angle || a.h - b.h);
  leaving.forEach(({ h }, k) => {
    around[k] = h;
  });
}

/** Direction in which a half-edge leaves its node, to its first point that is not the node itself. */
function direction(graph: ChainGraph, h: number): number {
  const coords = graph.lines[h >> 1];
  const n = coords.length / 2;
  const back = (h & 1) === 1;
  const [x0, y0] = endPoint(graph, h);
  for (let k = 1; k < n; k++) {
    const i = 2 * (back ? n - 1 - k : k);
    const [dx, dy] = [coords[i] - x0, coords[i + 1] - y0];
    if (Math.hypot(dx, dy) > SNAP_MM) {
      return Math.atan2(dy, dx);
    }
  }
  return 0;
}

/**
 * Appends a line, forwards or backwards, without a first point that repeats the last one and without closing
 * the ring.
 */
function appendLine(coords: number[], line: Line, back: boolean): void {
  const n = line.length / 2;
  for (let k = 0; k < n; k++) {
    const i = 2 * (back ? n - 1 - k : k);
    const [x, y] = [line[i], line[i + 1]];
    const joins = k === 0 && coords.length > 0;
    const last = coords.length - 2;
    if (!joins || Math.hypot(x - coords[last], y - coords[last + 1]) > SNAP_MM) {
      coords.push(x, y);
    }
  }
}

function dropRepeatedEnd(coords: number[]): void {
  const last = coords.length - 2;
  if (Math.hypot(coords[last] - coords[0], coords[last + 1] - coords[1]) <= SNAP_MM) {
    coords.length -= 2;
  }
}
