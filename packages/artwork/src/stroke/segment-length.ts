import type { Segment } from '../path/path.ts';
import { segmentAt } from '../path/segment-at.ts';

/** Length of a segment, and the parameter at a length along it. */
export interface SegmentLength {
  readonly total: number;
  /** Parameter 0…1 of the point that lies `length` along the segment. */
  parameterAt(length: number): number;
}

/** Pieces that each curve is measured in. */
const PIECES = 32;

/** Gauss–Legendre with five points on −1…1 (exact to degree 9). */
const NODES = [0, 0.538469310105683, -0.538469310105683, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [
  0.568888888888889, 0.478628670499366, 0.478628670499366, 0.236926885056189, 0.236926885056189,
];

/** Measures a segment, in its own unit; curves by quadrature, to better than 1e-9 of their length unless they have cusps. */
export function measureSegment(segment: Segment): SegmentLength {
  if (segment.kind === 'line') {
    const total = Math.hypot(segment.x - segment.x0, segment.y - segment.y0);
    return { total, parameterAt: (length) => clamp01(length / total) };
  }
  const ends = new Float64Array(PIECES + 1);
  for (let i = 0; i < PIECES; i++) {
    ends[i + 1] = (ends[i] as number) + lengthBetween(segment, i / PIECES, (i + 1) / PIECES);
  }
  const total = ends[PIECES] as number;
  const parameterAt = (length: number): number => {
    let i = 0;
    while (i < PIECES - 1 && (ends[i + 1] as number) < length) {
      i++;
    }
    return findIn(segment, i / PIECES, (i + 1) / PIECES, length - (ends[i] as number));
  };
  return { total, parameterAt };
}

/** Newton's steps, kept between two ends that close in by bisection. */
function findIn(segment: Segment, from: number, to: number, length: number): number {
  let low = from;
  let high = to;
  let t = (from + to) / 2;
  for (let i = 0; i < 40 && high - low > 1e-14; i++) {
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
    if (better && Math.abs(next - t) < 1e-14) {
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
    const p = segmentAt(segment, from + half * (1 + (NODES[k] as number)));
    sum += (WEIGHTS[k] as number) * Math.hypot(p.dx, p.dy);
  }
  return sum * half;
}

function clamp01(t: number): number {
  return Math.max(0, Math.min(1, t));
}
