import type { Segment } from '../path/path.ts';
import { segmentAt } from '../path/segment-at.ts';

/** Length of a segment, and the parameter at a length along it. */
export interface SegmentLength {
  readonly total: number;
  /** Parameter 0…1 of the point that lies `length` along the segment. */
  parameterAt(length: number): number;
}

/** Number of intervals in t that each curve is measured in. */
const INTERVALS = 32;

/**
 * A parameter is found once steps are smaller than this: some 50 times the spacing of doubles below 1. A
 * smaller one is never met where rounding of the length moves the root to and fro.
 */
const PARAMETER_TOLERANCE = 1e-14;

/** Newton's steps converge in a few; where all of them fail, so many halvings of 1/32 leave 3e-14. */
const MAX_STEPS = 40;

/** Gauss–Legendre with five points on −1…1 (exact to degree 9). */
const NODES = [0, 0.538469310105683, -0.538469310105683, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [
  0.568888888888889, 0.478628670499366, 0.478628670499366, 0.236926885056189, 0.236926885056189,
];

/**
 * Measures a segment, in its own unit; curves by quadrature, to better than 1e-9 of their length unless they
 * have cusps.
 */
export function measureSegment(segment: Segment): SegmentLength {
  if (segment.kind === 'line') {
    const total = Math.hypot(segment.x - segment.x0, segment.y - segment.y0);
    return { total, parameterAt: (length) => clamp01(length / total) };
  }
  const ends = new Float64Array(INTERVALS + 1);
  for (let i = 0; i < INTERVALS; i++) {
    ends[i + 1] = ends[i] + lengthBetween(segment, i / INTERVALS, (i + 1) / INTERVALS);
  }
  const total = ends[INTERVALS];
  const parameterAt = (length: number): number => {
    let i = 0;
    while (i < INTERVALS - 1 && ends[i + 1] < length) {
      i++;
    }
    return findIn(segment, i / INTERVALS, (i + 1) / INTERVALS, length - ends[i]);
  };
  return { total, parameterAt };
}

/** Newton's method, safeguarded by bisection. */
function findIn(segment: Segment, from: number, to: number, length: number): number {
  let low = from;
  let high = to;
  let t = (from + to) / 2;
  for (let i = 0; i < MAX_STEPS && high - low > PARAMETER_TOLERANCE; i++) {
    const off = lengthBetween(segment, from, t) - length;
    if (off === 0) {
      return t;
    }
    if (off > 0) {
      high = t;
    } else {
      low = t;
    }
    const p = segmentAt(segment, t);
    const next = t - off / Math.hypot(p.dx, p.dy);
    const better = next > low && next < high;
    if (better && Math.abs(next - t) < PARAMETER_TOLERANCE) {
      return next;
    }
    t = better ? next : (low + high) / 2;
  }
  return clamp01(t);
}

function lengthBetween(segment: Segment, from: number, to: number): number {
  const half = (to - from) / 2;
  let sum = 0;
  for (let k = 0; k < NODES.length; k++) {
    const p = segmentAt(segment, from + half * (1 + NODES[k]));
    sum += WEIGHTS[k] * Math.hypot(p.dx, p.dy);
  }
  return sum * half;
}

function clamp01(t: number): number {
  return Math.max(0, Math.min(1, t));
}
