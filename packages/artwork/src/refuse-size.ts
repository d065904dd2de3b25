import {
  type Bounds,
  type Drawing,
  EMPTY_BOUNDS,
  isEmptyBounds,
  joinBounds,
  ringsBounds,
  type TextInUnits,
} from '@pourproof/plane';
import { fileRefusal } from './file-refusals.ts';

/** No board is longer, mm (our choice; sizes that a job may ask for end there too). */
export const LONGEST_MM = 10_000;
/** Artwork whose longer side is less, mm, is less than any bit of a shop cuts (our choice). */
const LEAST_MM = 0.1;

/**
 * Looks at the box of what a reader is about to flatten, in mm, and at how its size came about; throws where
 * no board is that long.
 */
export type SizeGuard = (boundsMm: Bounds, scaleSource: TextInUnits) => void;

/**
 * The guard that refuses what is larger than any board before anything dear is computed on it.
 *
 * @param name what the drawing is called in the message
 */
export function sizeGuard(name: string): SizeGuard {
  return (bounds, scaleSource) => {
    // nothing to flatten has no size, and is told as that
    if (!isEmptyBounds(bounds)) {
      refuse(bounds, scaleSource, name, 0);
    }
  };
}

/**
 * Refuses artwork of a size that no board or no bit has, before anything is computed on it: its unit was
 * mistaken. Whatever it was read from.
 *
 * @param name what the drawing is called in the message
 * @throws {ArtworkError} `size-of-no-board`, with the sizes that other units would give
 */
export function refuseSize(drawing: Drawing, name: string): void {
  refuse(boundsOf(drawing), drawing.scaleSource, name, LEAST_MM);
}

function refuse(
  [left, top, right, bottom]: Bounds,
  scaleSource: TextInUnits,
  name: string,
  leastMm: number,
): void {
  const [widthMm, heightMm] = [right - left, bottom - top];
  const longest = Math.max(widthMm, heightMm);
  if (longest > LONGEST_MM || longest < leastMm) {
    const limitMm = longest > LONGEST_MM ? LONGEST_MM : leastMm;
    throw fileRefusal('size-of-no-board', { name, widthMm, heightMm, scaleSource, limitMm });
  }
}

function boundsOf({ shapes }: Drawing): Bounds {
  return shapes.reduce((all, { region }) => joinBounds(all, ringsBounds(region)), EMPTY_BOUNDS);
}
