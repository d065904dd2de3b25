import type { Segment, Subpath } from '../path/path.ts';
import { directionAt, isPointSegment } from '../path/segment-at.ts';
import { appendCap, lonePointRing } from './stroke-cap.ts';
import { appendJoin } from './stroke-join.ts';
import { appendSides } from './stroke-sides.ts';

/**
 * Points of an edge nearer than this fraction of half the width are one: the ends of two segments of a smooth
 * path, computed from either side. A larger fraction would drop points of finely drawn curves.
 */
const REPEAT_REL = 1e-9;

/** How a line is drawn; lengths in the path's unit. */
export interface StrokeStyle {
  readonly width: number;
  readonly cap: 'butt' | 'round' | 'square';
  readonly join: 'miter' | 'miter-clip' | 'round' | 'bevel';
  /** Largest ratio of a miter's length to the stroke's width, ≥ 1. */
  readonly miterLimit: number;
}

/**
 * The two edges of a stroke as it is walked: `right` lies against the +x→+y normal of travel, `left` along
 * it.
 */
export interface StrokeEdges {
  readonly right: number[];
  readonly left: number[];
  /** Rings of their own, for places where an edge would run backwards. */
  readonly extra: number[][];
}

/**
 * Rings whose non-zero fill is exactly what the stroke of a subpath covers (SVG 2 §13.7: the sweep of the
 * cross-line, joins, caps), within `tolerance` of its true outline, in the path's unit. They are passed on one
 * by one, so that they need not all be held in memory. Dashes are cut before, by {@link cutDashes}.
 *
 * No union is needed to make them: every ring goes round each point of the stroke as often as the sweep
 * passes over it and never the other way. At the inner side of a corner the edge goes through the path's own
 * point, and where a curve is tighter than half the width its inner edge stays on the curve and the backward
 * part becomes rings of its own.
 *
 * Subpaths of no length give a dot for round caps, an upright square for square ones, nothing for butt ones.
 * Width 0 or less gives none.
 */
export function strokeSubpath(
  sub: Subpath,
  style: StrokeStyle,
  tolerance: number,
  take: (ring: number[]) => void,
): void {
  if (!(style.width > 0)) {
    return;
  }
  const half = style.width / 2;
  const edges: StrokeEdges = { right: [], left: [], extra: [] };
  let first: Segment | undefined;
  let last: Segment | undefined;
  for (const segment of sub.segments) {
    if (isPointSegment(segment)) {
      continue;
    }
    if (last !== undefined) {
      joinAt(edges, last, segment, style, tolerance);
    }
    appendSides(edges, segment, half, tolerance);
    first ??= segment;
    last = segment;
  }
  if (first === undefined || last === undefined) {
    const dot = lonePointRing(sub.x0, sub.y0, half, style.cap, tolerance);
    if (dot !== undefined) {
      take(dot);
    }
    return;
  }
  finishRings(edges, sub.closed, first, last, style, tolerance, take);
}

function finishRings(
  edges: StrokeEdges,
  closed: boolean,
  first: Segment,
  last: Segment,
  style: StrokeStyle,
  tolerance: number,
  take: (ring: number[]) => void,
): void {
  const half = style.width / 2;
  if (closed) {
    joinAt(edges, last, first, style, tolerance);
    take(withoutRepeats(edges.right, half));
    take(withoutRepeats(reversed(edges.left), half));
  } else {
    const ring = edges.right;
    appendCap(ring, last.x, last.y, endDirection(last), half, style.cap, tolerance);
    const { left } = edges;
    for (let i = left.length - 2; i >= 0; i -= 2) {
      ring.push(left[i], left[i + 1]);
    }
    left.length = 0;
    const [tx, ty] = startDirection(first);
    appendCap(ring, first.x0, first.y0, [-tx, -ty], half, style.cap, tolerance);
    take(withoutRepeats(ring, half));
  }
  edges.extra.forEach(take);
}

function joinAt(edges: StrokeEdges, a: Segment, b: Segment, style: StrokeStyle, tolerance: number): void {
  appendJoin(edges, b.x0, b.y0, endDirection(a), startDirection(b), style, tolerance);
}

function startDirection(s: Segment): readonly [number, number] {
  return directionAt(s, 0) ?? [1, 0];
}

function endDirection(s: Segment): readonly [number, number] {
  return directionAt(s, 1) ?? [1, 0];
}

/** Drops points that repeat the one before, where segments of a smooth path join; in place. */
function withoutRepeats(ring: number[], half: number): number[] {
  const min = REPEAT_REL * half;
  let n = Math.min(2, ring.length);
  for (let i = 2; i < ring.length; i += 2) {
    const x = ring[i];
    const y = ring[i + 1];
    if (Math.abs(x - ring[n - 2]) > min || Math.abs(y - ring[n - 1]) > min) {
      ring[n] = x;
      ring[n + 1] = y;
      n += 2;
    }
  }
  ring.length = n;
  return ring;
}

/** Reverses a ring in place. */
function reversed(ring: number[]): number[] {
  for (let i = 0, k = ring.length - 2; i < k; i += 2, k -= 2) {
    const [x, y] = [ring[i], ring[i + 1]];
    ring[i] = ring[k];
    ring[i + 1] = ring[k + 1];
    ring[k] = x;
    ring[k + 1] = y;
  }
  return ring;
}
