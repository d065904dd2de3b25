import { type Bounds, EMPTY_BOUNDS, joinBounds } from '@pourproof/plane';
import type { ArcSegment, CubicSegment, Path, Segment } from './path.ts';

/**
 * The tight box around a path's geometry (no strokes), in the path's unit; empty for a path without segments.
 */
export function pathBounds(path: Path): Bounds {
  let box = EMPTY_BOUNDS;
  for (const sub of path) {
    for (const segment of sub.segments) {
      box = joinBounds(box, segmentBounds(segment));
    }
  }
  return box;
}

function segmentBounds(s: Segment): Bounds {
  const xs = [s.x0, s.x];
  const ys = [s.y0, s.y];
  if (s.kind === 'cubic') {
    xs.push(...cubicExtremes(s.x0, s.x1, s.x2, s.x));
    ys.push(...cubicExtremes(s.y0, s.y1, s.y2, s.y));
  } else if (s.kind === 'arc') {
    xs.push(...arcExtremes(s, s.arc.cx, s.arc.ux, s.arc.vx));
    ys.push(...arcExtremes(s, s.arc.cy, s.arc.uy, s.arc.vy));
  }
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** Values of one coordinate of a cubic where its derivative is zero inside the curve. */
function cubicExtremes(
  p0: CubicSegment['x0'],
  p1: CubicSegment['x1'],
  p2: CubicSegment['x2'],
  p3: CubicSegment['x'],
): number[] {
  const a = p3 - 3 * p2 + 3 * p1 - p0;
  const b = 2 * (p2 - 2 * p1 + p0);
  const c = p1 - p0;
  const at = (t: number): number => {
    const u = 1 - t;
    return u * u * u * p0 + 3 * u * t * (u * p1 + t * p2) + t * t * t * p3;
  };
  const disc = b * b - 4 * a * c;
  if (disc < 0) {
    return [];
  }
  // the stable pair of roots; a or q may be 0, then the quotient is not finite and is left out
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(disc));
  return [q / a, c / q].filter((t) => t > 0 && t < 1).map(at);
}

/** Values of one coordinate c + cosθ·u + sinθ·v where it is largest and smallest, if the arc passes there. */
function arcExtremes({ arc }: ArcSegment, c: number, u: number, v: number): number[] {
  const low = Math.min(arc.start, arc.end);
  const high = Math.max(arc.start, arc.end);
  const reach = Math.hypot(u, v);
  const out: number[] = [];
  for (const [turn, sign] of [
    [0, 1],
    [Math.PI, -1],
  ] as const) {
    const theta = Math.atan2(v, u) + turn;
    const first = theta + 2 * Math.PI * Math.ceil((low - theta) / (2 * Math.PI));
    if (first <= high) {
      out.push(c + sign * reach);
    }
  }
  return out;
}
