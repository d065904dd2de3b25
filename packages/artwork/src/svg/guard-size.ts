import { type Bounds, ringsBounds, textInUnits } from '@pourproof/plane';
import { largestScale } from '../path/largest-scale.ts';
import type { Path, Segment } from '../path/path.ts';
import { pathBounds } from '../path/path-bounds.ts';
import { transformPath } from '../path/transform-path.ts';
import { LONGEST_MM } from '../refuse-size.ts';
import type { DrawState, Scene } from './scene.ts';

/**
 * Asks the guard of sizes, where there is one, about the box of a path that is about to be painted, as far
 * as its clip lets it be seen.
 */
export function guardSize({ options, pageSource }: Scene, { toMm, clip }: DrawState, path: Path): void {
  const { refuseBounds } = options;
  const far = reach(path) * largestScale(toMm) + Math.hypot(toMm[4], toMm[5]);
  if (refuseBounds === undefined || far <= LONGEST_MM / 2) {
    return;
  }
  const box = pathBounds(transformPath(toMm, path));
  refuseBounds(clip === undefined ? box : common(box, ringsBounds(clip)), textInUnits(pageSource));
}

/** No point of a path is further from the origin; numbers that overflow are told elsewhere. */
function reach(path: Path): number {
  let far = 0;
  for (const { x0, y0, segments } of path) {
    far = Math.max(far, Math.hypot(x0, y0));
    segments.forEach((segment) => {
      far = Math.max(far, segmentReach(segment));
    });
  }
  return far;
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

function common(a: Bounds, b: Bounds): Bounds {
  return [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.min(a[2], b[2]), Math.min(a[3], b[3])];
}
