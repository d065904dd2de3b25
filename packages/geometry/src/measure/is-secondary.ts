import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/** Whether axis edge e is secondary: between a segment and one of its own end vertices. */
export function isSecondary({ edgeLeft, edgeRight, boundary }: MedialAxis, e: number): boolean {
  const { count, next } = boundary;
  const a = edgeLeft[e];
  const b = edgeRight[e];
  if (a < count) {
    return b >= count && (b === count + a || b === count + next[a]);
  }
  return b < count && (a === count + b || a === count + next[b]);
}
