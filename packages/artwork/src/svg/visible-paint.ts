import { type Bounds, isEmptyBounds, ringsBounds } from '@pourproof/plane';
import { indexBoxes } from '../clip/box-index.ts';
import { subtractRegions } from '../clip/clip-region.ts';
import type { NoticeBook } from './notice-book.ts';
import type { Painted } from './scene.ts';

/** The colour of paper: paint in it hides, but is not carved. */
const PAPER = '#ffffff';

/**
 * What can be seen of each shape by painter's order: opaque paint hides what lies beneath. White paint counts as paper, so it
 * leaves wood standing. Translucent paint hides nothing.
 */
export function visiblePaint(notices: NoticeBook, painted: readonly Painted[]): Painted[] {
  const boxes = painted.map((p) => ringsBounds(p.region));
  const index = indexBoxes(boxes);
  const out: Painted[] = [];
  painted.forEach((shape, i) => {
    if (shape.colour === PAPER) {
      notices.add('paper-left-out', shape.place);
      return;
    }
    const above = index
      .overlapping(boxes[i] as Bounds)
      .filter((k) => k > i && (painted[k] as Painted).opaque)
      .map((k) => (painted[k] as Painted).region);
    const region = subtractRegions(shape.region, above);
    if (region.ringEnds.length > 0 && !isEmptyBounds(ringsBounds(region))) {
      out.push({ ...shape, region });
    }
  });
  return out;
}
