import { type Bounds, signedArea } from '@pourproof/plane';
import { indexBoxes } from '../clip/box-index.ts';
import { intersectRegions } from '../clip/clip-region.ts';
import type { NoticeBook } from './notice-book.ts';
import type { Painted } from './scene.ts';

/** Pairs of shapes that are compared exactly for each shape; beyond, overlapping boxes are enough to say so. */
const MAX_COMPARED = 8;

/** Shapes with more coordinates than this are told apart by their boxes alone. */
const MAX_COORDS = 20_000;

/** Overlaps smaller than this part of a square millimetre are touching edges. */
const TOUCHING_MM2 = 1e-4;

/** Writes down shapes that lie over earlier ones of another colour; white ones apart, since they look like knock-outs. */
export function noticeCovers(
  notices: NoticeBook,
  painted: readonly Painted[],
  boxes: readonly Bounds[],
): void {
  if (new Set(painted.map((p) => p.colour)).size < 2) {
    return;
  }
  const index = indexBoxes(boxes);
  painted.forEach((shape, i) => {
    let compared = 0;
    const covers = index.someBefore(i, boxes[i] as Bounds, (k) => {
      const below = painted[k] as Painted;
      if (below.colour === shape.colour) {
        return false;
      }
      compared++;
      return compared > MAX_COMPARED || trulyOverlap(shape, below);
    });
    if (covers) {
      notices.add(shape.colour === '#ffffff' ? 'likely-knock-out' : 'paint-covers-paint', shape.place);
    }
  });
}

function trulyOverlap(a: Painted, b: Painted): boolean {
  if (a.region.coords.length + b.region.coords.length > MAX_COORDS) {
    return true;
  }
  return Math.abs(signedArea(intersectRegions(a.region, b.region))) > TOUCHING_MM2;
}
