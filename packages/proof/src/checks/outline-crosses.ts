import { type Resolved, resolveRegions } from '@pourproof/arrangement';
import type { Measured } from '../measured.ts';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** More places would only clutter the sheet; the count gives their number. */
const MAX_PLACES = 100;

/**
 * Outlines that cross themselves: the fill rule decides what is cut there, which may not be what was meant.
 */
export const outlineCrosses: Check = {
  code: 'outline-crosses',
  run: (measured) => {
    const resolved = outlinesAlone(measured);
    if (resolved.crossingCount === 0) {
      return null;
    }
    const own = resolved.crossings.some((crossing) => crossing.kind === 'self');
    return {
      code: 'outline-crosses',
      severity: own ? 'caution' : 'note',
      where: resolved.crossings
        .slice(0, MAX_PLACES)
        .map((crossing) => placeOfPoint(crossing.atMm, { what: 'crossing' })),
      measured: { value: resolved.crossingCount, quantity: 'count', unit: '1' },
      limit: { value: 0, quantity: 'count', unit: '1' },
      because: ['svg2-fill'],
      fix: {
        options: [{ do: 'merge-shapes', crossings: resolved.crossingCount, clears: true }],
      },
    };
  },
};

/**
 * The drawing resolved without strokes and letters, whose pieces overlap by design and cross whatever they
 * are drawn over.
 */
function outlinesAlone({ drawing, resolved }: Measured): Resolved {
  const outlines = drawing.shapes.filter((shape) => shape.isPieced !== true);
  return outlines.length === drawing.shapes.length
    ? resolved
    : resolveRegions(outlines.map((shape) => shape.region));
}
