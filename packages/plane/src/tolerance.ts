/**
 * Largest distance, in mm, between a curve and the polyline that stands for it, by default.
 * 5 µm is well below what a hobby router repeats (common practice: 20–50 µm); smaller costs time, larger shows in strokes.
 */
export const DEFAULT_FLATTEN_TOLERANCE_MM = 0.005;

/**
 * Largest gap, in mm, that is closed between two ends of drawn lines when chains are joined, by default.
 * Drawing programs round to 0.001–0.01 mm (from memory); every gap that is closed is reported with its size.
 */
export const DEFAULT_JOIN_TOLERANCE_MM = 0.05;

/**
 * Grid, in mm, on which crossings of drawn shapes are computed (1 nm): far below any tool, far above double rounding at board size.
 */
export const RESOLVE_GRID_MM = 1e-6;

/** Parts of artwork smaller than this area, in mm², are called specks (common practice; no source). */
export const SPECK_AREA_MM2 = 0.1;
