import { isEmptyBounds, ringsBounds } from '@pourproof/plane';
import { boxesOf, indexBoxes } from '../clip/box-index.ts';
import { subtractRegions } from '../clip/clip-region.ts';
import type { NoticeBook } from './notice-book.ts';
import { regionsOf } from './preflight.ts';
import { type Painted, placeOf } from './scene.ts';

/** The colour of paper: paint in it hides, but is not carved. */
const PAPER = '#ffffff';

/**
 * What can be seen of each shape by painter's order: opaque paint hides what lies beneath. White paint counts as paper, so it
 * leaves wood standing. Translucent paint hides nothing.
 */
export function visiblePaint(notices: NoticeBook, painted: readonly Painted[]): Painted[] {
  const index = indexBoxes(boxesOf(regionsOf(painted), painted.length));
  const out: Painted[] = [];
  painted.forEach((below, i) => {
    const { shape, element } = below;
    if (shape.colour === PAPER) {
      notices.add('paper-left-out', placeOf(element));
      return;
    }
    const above = index
      .overlapping(i)
      .filter((k) => k > i && (painted[k] as Painted).opaque)
      .map((k) => (painted[k] as Painted).shape.region);
    const region = subtractRegions(shape.region, above);
    if (region.ringEnds.length > 0 && !isEmptyBounds(ringsBounds(region))) {
      out.push({ ...below, shape: { ...shape, region } });
    }
  });
  return out;
}
