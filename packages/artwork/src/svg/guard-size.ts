import { type Bounds, ringsBounds, textInUnits } from '@pourproof/plane';
import type { Path } from '../path/path.ts';
import { pathBounds } from '../path/path-bounds.ts';
import { pathReach } from '../path/path-reach.ts';
import { transformPath } from '../path/transform-path.ts';
import { LONGEST_MM } from '../refuse-size.ts';
import type { DrawState, Scene } from './scene.ts';

/**
 * Asks the guard of sizes, where there is one, about the box of a path that is about to be painted, as far
 * as its clip lets it be seen.
 */
export function guardSize({ options, pageSource }: Scene, { toMm, clip }: DrawState, path: Path): void {
  const { refuseBounds } = options;
  if (refuseBounds === undefined || pathReach(path, toMm) <= LONGEST_MM / 2) {
    return;
  }
  const box = pathBounds(transformPath(toMm, path));
  refuseBounds(clip === undefined ? box : common(box, ringsBounds(clip)), textInUnits(pageSource));
}

function common(a: Bounds, b: Bounds): Bounds {
  return [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.min(a[2], b[2]), Math.min(a[3], b[3])];
}
