/** Strokes thinner than this, in mm, are called hairlines (common practice; no source). */
export const HAIRLINE_MM = 0.1;

/**
 * Segments shorter than this, in mm, are finer than most machines follow at their usual feed (common
 * practice; no source).
 */
export const FINE_SEGMENT_MM = 0.02;
