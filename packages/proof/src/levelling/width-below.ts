/** Widest stroke considered, mm. */
const MAX_WIDTH_MM = 1000;
/** How far above `fromMm` the search starts, relative to it: far above rounding, far below any measure. */
const ABOVE_TIP_REL_TOL = 1e-9;
/** Where it starts if `fromMm` is 0, mm. */
const MIN_WIDTH_MM = 1e-9;
/** Bisection steps: to rounding. */
const WIDTH_BISECTIONS = 60;

/**
 * Width below which a predicate holds for strokes, mm, for one that holds for all narrower strokes if it
 * holds for one: 0 if it holds for none from `fromMm` on, infinite if it holds for all.
 */
export function widthBelow(isTrue: (widthMm: number) => boolean, fromMm: number): number {
  if (isTrue(MAX_WIDTH_MM)) {
    return Number.POSITIVE_INFINITY;
  }
  // slightly above: a stroke exactly as wide as a flat tip has no section
  let low = Math.max(fromMm * (1 + ABOVE_TIP_REL_TOL), MIN_WIDTH_MM);
  if (!isTrue(low)) {
    return 0;
  }
  let high = MAX_WIDTH_MM;
  for (let k = 0; k < WIDTH_BISECTIONS && low < high; k++) {
    // first the order of magnitude, then the digits
    const middle = high > 2 * low ? Math.sqrt(low * high) : (low + high) / 2;
    if (isTrue(middle)) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return high;
}
