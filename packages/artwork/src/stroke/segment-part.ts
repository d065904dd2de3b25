import type { CubicSegment, Segment } from '../path/path.ts';
import { segmentAt } from '../path/segment-at.ts';

/** The part of a segment between parameters `from` ≤ `to`, exactly; whole ends keep their coordinates. */
export function segmentPart(s: Segment, from: number, to: number): Segment {
  const start = from === 0 ? { x: s.x0, y: s.y0 } : segmentAt(s, from);
  const end = to === 1 ? { x: s.x, y: s.y } : segmentAt(s, to);
  if (s.kind === 'line') {
    return { kind: 'line', x0: start.x, y0: start.y, x: end.x, y: end.y };
  }
  if (s.kind === 'arc') {
    const turn = s.arc.end - s.arc.start;
    const arc = { ...s.arc, start: s.arc.start + from * turn, end: s.arc.start + to * turn };
    return { kind: 'arc', x0: start.x, y0: start.y, x: end.x, y: end.y, arc };
  }
  return cubicPart(s, from, to, start, end);
}

/**
 * A third of the derivative at each end of the part, by the part's own length of parameter, gives its inner
 * control points.
 */
function cubicPart(
  s: CubicSegment,
  from: number,
  to: number,
  start: { x: number; y: number },
  end: { x: number; y: number },
): CubicSegment {
  const a = segmentAt(s, from);
  const b = segmentAt(s, to);
  const h = (to - from) / 3;
  return {
    kind: 'cubic',
    x0: start.x,
    y0: start.y,
    x1: start.x + h * a.dx,
    y1: start.y + h * a.dy,
    x2: end.x - h * b.dx,
    y2: end.y - h * b.dy,
    x: end.x,
    y: end.y,
  };
}
