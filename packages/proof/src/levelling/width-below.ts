/** Wider strokes than this are not looked for, mm. */
const MAX_WIDTH_MM = 1000;
/** How far above the narrowest width the search starts: as a share of it, and at least so many mm. */
const START_REL_TOL = 1e-9;
const MIN_START_MM = 1e-9;
/** Bisection steps: enough to reach rounding. */
const HALVINGS = 60;

/**
 * The width in mm below which a predicate holds, for a predicate that holds for all narrower strokes once it
 * holds for one: 0 where it holds for none from `fromMm` up, infinite where it holds for all.
 */
export function widthBelow(isTrue: (widthMm: number) => boolean, fromMm: number): number {
  if (isTrue(MAX_WIDTH_MM)) {
    return Number.POSITIVE_INFINITY;
  }
  // just above: at the width of its own tip a bit leaves no stroke
  let low = Math.max(fromMm * (1 + START_REL_TOL), MIN_START_MM);
  if (!isTrue(low)) {
    return 0;
  }
  let high = MAX_WIDTH_MM;
  for (let k = 0; k < HALVINGS && low < high; k++) {
    // by orders of magnitude first, then by digits
    const middle = high > 2 * low ? Math.sqrt(low * high) : (low + high) / 2;
    if (isTrue(middle)) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return high;
}
