/**
 * Control points that lie off a chord by no more than this fraction of the curve's size lie on it but for
 * rounding: coordinates carry 2⁻⁵³ ≈ 1.1e-16 of their size each, and transforms add some hundreds of such
 * errors. A curve taken for straight is off by at most 1e-10 mm at a metre; a smaller fraction would cut
 * straight lines into thousands of segments to find an area of 0.
 */
export const ON_CHORD_REL = 1e-13;

/**
 * The same along the chord, squared lengths compared: a control point beyond an end by less is at the end.
 */
export const BEYOND_END_REL = 1e-12;
