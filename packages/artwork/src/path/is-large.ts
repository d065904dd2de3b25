import type { Path } from './path.ts';

/** Paths with more segments than this count as large (our choice: some hundred letters). */
const LARGE_FROM = 5000;

/**
 * Whether the points of a path's outline should be counted before they are written: that takes time, but
 * otherwise the outline is held twice while it is assembled.
 */
export function isLarge(path: Path): boolean {
  let segments = 0;
  for (const sub of path) {
    segments += sub.segments.length;
  }
  return segments > LARGE_FROM;
}
