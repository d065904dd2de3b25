import type { Path } from './path.ts';

/** From this many segments on a path counts as large (our choice: some hundred letters of lettering). */
const LARGE_FROM = 5000;

/**
 * Whether the points of a path's outline are better counted before they are written: that takes some time, and otherwise the outline would be held twice
 * while it is put together.
 */
export function isLarge(path: Path): boolean {
  let segments = 0;
  for (const sub of path) {
    segments += sub.segments.length;
  }
  return segments > LARGE_FROM;
}
