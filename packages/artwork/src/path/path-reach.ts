import type { Transform } from '@pourproof/plane';
import { largestScale } from './largest-scale.ts';
import type { Path, Segment } from './path.ts';

/** No point of a mapped path, handles included, is further from the origin, in the unit that the map leads to. */
export function pathReach(path: Path, map: Transform): number {
  let far = 0;
  for (const { x0, y0, segments } of path) {
    far = Math.max(far, Math.hypot(x0, y0));
    segments.forEach((segment) => {
      far = Math.max(far, segmentReach(segment));
    });
  }
  return far * largestScale(map) + Math.hypot(map[4], map[5]);
}

function segmentReach(segment: Segment): number {
  const end = Math.hypot(segment.x, segment.y);
  if (segment.kind === 'cubic') {
    return Math.max(end, Math.hypot(segment.x1, segment.y1), Math.hypot(segment.x2, segment.y2));
  }
  if (segment.kind === 'arc') {
    const { cx, cy, ux, uy, vx, vy } = segment.arc;
    return Math.max(end, Math.hypot(cx, cy) + Math.hypot(ux, uy) + Math.hypot(vx, vy));
  }
  return end;
}
