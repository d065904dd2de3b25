import type { Path, Segment, Subpath } from '../path/path.ts';
import { directionAt, isPointSegment } from '../path/segment-at.ts';
import { appendCap, lonePointRing } from './stroke-cap.ts';
import { appendJoin } from './stroke-join.ts';
import { appendSides } from './stroke-sides.ts';

/** How a line is drawn; lengths in the path's unit. */
export interface StrokeStyle {
  readonly width: number;
  readonly cap: 'butt' | 'round' | 'square';
  readonly join: 'miter' | 'miter-clip' | 'round' | 'bevel';
  /** Largest ratio of a miter's length to the stroke's width, ≥ 1. */
  readonly miterLimit: number;
}

/** The two edges of a stroke as it is walked: `right` lies against the +x→+y normal of travel, `left` along it. */
export interface StrokeEdges {
  readonly right: number[];
  readonly left: number[];
  /** Rings of their own, for places where an edge would run backwards. */
  readonly extra: number[][];
}

/**
 * Rings whose non-zero fill is exactly what the stroke of a path covers (SVG 2 §13.7: the sweep of the cross-line, joins, caps),
 * within `tolerance` of its true outline, in the path's unit. Dashes are cut before, by {@link cutDashes}.
 *
 * No union is needed to make them: every ring goes round each point of the stroke as often as the sweep passes over it and
 * never the other way. At the inner side of a corner the edge goes through the path's own point, and where a curve is tighter
 * than half the width its inner edge stays on the curve and the backward part becomes rings of its own.
 *
 * Subpaths of no length give a dot for round caps, an upright square for square ones, nothing for butt ones. Width 0 or less gives none.
 */
export function strokeOutline(path: Path, style: StrokeStyle, tolerance: number): number[][] {
  const rings: number[][] = [];
  if (!(style.width > 0)) {
    return rings;
  }
  for (const sub of path) {
    strokeSubpath(rings, sub, style, tolerance);
  }
  return rings;
}

function strokeSubpath(rings: number[][], sub: Subpath, style: StrokeStyle, tolerance: number): void {
  const half = style.width / 2;
  const segments = sub.segments.filter((s) => !isPointSegment(s));
  const first = segments[0];
  const last = segments[segments.length - 1];
  if (first === undefined || last === undefined) {
    const dot = lonePointRing(sub.x0, sub.y0, half, style.cap, tolerance);
    if (dot !== undefined) {
      rings.push(dot);
    }
    return;
  }
  const edges: StrokeEdges = { right: [], left: [], extra: [] };
  segments.forEach((segment, i) => {
    if (i > 0) {
      joinAt(edges, segments[i - 1] as Segment, segment, style, tolerance);
    }
    appendSides(edges, segment, half, tolerance);
  });
  if (sub.closed) {
    joinAt(edges, last, first, style, tolerance);
    rings.push(withoutRepeats(edges.right, half), withoutRepeats(reversed(edges.left), half), ...edges.extra);
    return;
  }
  const ring = edges.right;
  appendCap(ring, last.x, last.y, endDirection(last), half, style.cap, tolerance);
  const back = reversed(edges.left);
  for (let i = 0; i < back.length; i++) {
    ring.push(back[i] as number);
  }
  const [tx, ty] = startDirection(first);
  appendCap(ring, first.x0, first.y0, [-tx, -ty], half, style.cap, tolerance);
  rings.push(withoutRepeats(ring, half), ...edges.extra);
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

/** Drops points that repeat the one before, where pieces of a smooth path join. */
function withoutRepeats(ring: readonly number[], half: number): number[] {
  const out: number[] = [];
  const least = 1e-9 * half;
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i] as number;
    const y = ring[i + 1] as number;
    const n = out.length;
    if (
      n === 0 ||
      Math.abs(x - (out[n - 2] as number)) > least ||
      Math.abs(y - (out[n - 1] as number)) > least
    ) {
      out.push(x, y);
    }
  }
  return out;
}

function reversed(ring: readonly number[]): number[] {
  const out = new Array<number>(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    out[i] = ring[ring.length - 2 - i] as number;
    out[i + 1] = ring[ring.length - 1 - i] as number;
  }
  return out;
}
