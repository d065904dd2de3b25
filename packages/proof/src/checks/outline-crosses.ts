import { type CleanRegion, ringCoords, signedArea } from '@pourproof/plane';
import { outlineCrossings } from '../cut/outline-crossings.ts';
import type { Check } from './check.ts';
import { placeOfPoint, placeOfRings } from './places.ts';

/** More places would only clutter the sheet; the count gives their number. */
const MAX_PLACES = 100;

/**
 * Outlines that cross: the fill rule decides what is cut there, which may not be what was meant. Strokes and
 * letters are left out, whose pieces overlap by design and cross whatever they are drawn over.
 */
export const outlineCrosses: Check = {
  code: 'outline-crosses',
  run: ({ drawing, resolved, artwork }) => {
    const outlines = drawing.shapes.filter((shape) => shape.isPieced !== true);
    if (resolved.crossingCount === 0) {
      return null;
    }
    const { crossings, count, isOwn, leftAsWood } = outlineCrossings(outlines, artwork, drawing.toleranceMm);
    if (count === 0) {
      return null;
    }
    return {
      code: 'outline-crosses',
      severity: isOwn || leftAsWood.length > 0 ? 'caution' : 'note',
      where: [
        ...leftAsWood.map(woodPlace),
        ...crossings.map((crossing) => placeOfPoint(crossing.atMm, { what: 'crossing' })),
      ].slice(0, MAX_PLACES),
      measured: { value: count, quantity: 'count', unit: '1' },
      limit: { value: 0, quantity: 'count', unit: '1' },
      because: ['svg2-fill'],
      fix: { options: [{ do: 'merge-shapes', crossings: count, clears: true }] },
    };
  },
};

/** A part that stays wood, shown by its outline, at a point of it. */
function woodPlace(part: CleanRegion): ReturnType<typeof placeOfRings> {
  const [x = 0, y = 0] = ringCoords(part, 0);
  return placeOfRings([x, y], part, { what: 'wood', areaMm2: signedArea(part) });
}
