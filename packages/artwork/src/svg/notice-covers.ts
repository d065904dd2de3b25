import { type DrawnShape, signedArea } from '@pourproof/plane';
import { type Boxes, OverlapIndex } from '../clip/boxes.ts';
import { intersectRegions } from '../clip/clip-region.ts';
import type { Painted, SvgNotices } from './scene.ts';
import { placeOf } from './svg-element.ts';

/** Most shapes that each shape is compared with exactly; beyond that, overlapping boxes are enough. */
const MAX_COMPARED = 8;

/** Pairs with more coordinates than this are compared by their boxes alone. */
const MAX_COORDS = 20_000;

/** Overlaps smaller than this, in mm², are touching edges: a tenth of a micrometre along a millimetre. */
const TOUCHING_MM2 = 1e-4;

/**
 * Notices shapes on top of earlier ones of another colour; white ones separately, since they look like
 * knock-outs.
 */
export function noticeCovers(notices: SvgNotices, painted: readonly Painted[], boxes: Boxes): void {
  const colour = painted[0]?.shape.colour;
  if (painted.every((p) => p.shape.colour === colour)) {
    return;
  }
  const index = new OverlapIndex(boxes);
  painted.forEach(({ shape, element }, i) => {
    let compared = 0;
    const covers = index.some(i, (k) => {
      if (k > i) {
        return false;
      }
      const below = (painted[k] as Painted).shape;
      if (below.colour === shape.colour) {
        return false;
      }
      compared++;
      return compared > MAX_COMPARED || trulyOverlap(shape, below);
    });
    if (covers) {
      notices.add(shape.colour === '#ffffff' ? 'likely-knock-out' : 'paint-covers-paint', placeOf(element));
    }
  });
}

function trulyOverlap(a: DrawnShape, b: DrawnShape): boolean {
  if (a.region.coords.length + b.region.coords.length > MAX_COORDS) {
    return true;
  }
  return Math.abs(signedArea(intersectRegions(a.region, b.region))) > TOUCHING_MM2;
}
