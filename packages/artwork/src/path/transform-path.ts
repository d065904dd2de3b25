import { applyTransform, type Transform } from '@pourproof/plane';
import type { Path, Segment, Subpath } from './path.ts';

/** The path through an affine map, in the map's target unit; arcs stay arcs (of other ellipses). */
export function transformPath(t: Transform, path: Path): Path {
  return path.map((sub): Subpath => {
    const [x0, y0] = applyTransform(t, [sub.x0, sub.y0]);
    const segments: Segment[] = [];
    for (const s of sub.segments) {
      segments.push(transformSegment(t, s));
    }
    return { x0, y0, closed: sub.closed, segments };
  });
}

/** A segment through an affine map. */
export function transformSegment(t: Transform, s: Segment): Segment {
  const [x0, y0] = applyTransform(t, [s.x0, s.y0]);
  const [x, y] = applyTransform(t, [s.x, s.y]);
  if (s.kind === 'line') {
    return { kind: 'line', x0, y0, x, y };
  }
  if (s.kind === 'cubic') {
    const [x1, y1] = applyTransform(t, [s.x1, s.y1]);
    const [x2, y2] = applyTransform(t, [s.x2, s.y2]);
    return { kind: 'cubic', x0, y0, x1, y1, x2, y2, x, y };
  }
  const { arc } = s;
  const [cx, cy] = applyTransform(t, [arc.cx, arc.cy]);
  return {
    kind: 'arc',
    x0,
    y0,
    x,
    y,
    arc: {
      cx,
      cy,
      ux: t[0] * arc.ux + t[2] * arc.uy,
      uy: t[1] * arc.ux + t[3] * arc.uy,
      vx: t[0] * arc.vx + t[2] * arc.vy,
      vy: t[1] * arc.vx + t[3] * arc.vy,
      start: arc.start,
      end: arc.end,
    },
  };
}
