import { type CoordSink, flattenCubic, flattenEllipseArc } from '../flatten.ts';
import type { Path, Segment } from './path.ts';

/**
 * Each subpath as a closed ring of flat coordinates for filling, in the path's unit, within `tolerance` of the curves and with
 * exactly their area. Open subpaths are closed by a straight line, as SVG fills them. Rings of fewer than three points are left out:
 * they hold no area.
 */
export function fillRings(path: Path, tolerance: number): number[][] {
  const rings: number[][] = [];
  for (const sub of path) {
    const ring: CoordSink = [sub.x0, sub.y0];
    for (const segment of sub.segments) {
      appendSegment(ring, segment, tolerance);
    }
    while (ring.length > 2 && ring[ring.length - 2] === ring[0] && ring[ring.length - 1] === ring[1]) {
      ring.length -= 2;
    }
    if (ring.length >= 6) {
      rings.push(ring);
    }
  }
  return rings;
}

/** Appends a segment without its start point. */
function appendSegment(ring: CoordSink, s: Segment, tolerance: number): void {
  if (s.kind === 'line') {
    ring.push(s.x, s.y);
  } else if (s.kind === 'cubic') {
    flattenCubic(ring, s.x0, s.y0, s.x1, s.y1, s.x2, s.y2, s.x, s.y, tolerance);
  } else {
    flattenEllipseArc(ring, s.arc, tolerance);
    // the end as the file gives it, so that pieces join to the last digit
    ring.length -= 2;
    ring.push(s.x, s.y);
  }
}
