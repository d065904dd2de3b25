/**
 * Largest distance, in mm, between a curve and the polyline that stands for it, by default. 5 µm is well
 * below what a hobby router repeats (common practice: 20–50 µm); smaller costs time, larger shows in strokes.
 */
export const DEFAULT_FLATTEN_TOLERANCE_MM = 0.005;

/**
 * Largest gap, in mm, that is closed by default between the ends of two drawn lines. Drawings are stored to
 * 0.001–0.01 mm (from memory); every gap that is closed is reported with its size.
 */
export const DEFAULT_JOIN_TOLERANCE_MM = 0.05;

/**
 * Resolution, in mm, at which crossings of drawn shapes are computed (1 nm): far below what any tool holds,
 * far above the rounding of doubles at the size of a board.
 */
export const RESOLVE_GRID_MM = 1e-6;

/** Parts of artwork smaller than this, in mm², are specks (common practice; no source). */
export const SPECK_AREA_MM2 = 0.1;

/**
 * Relative tolerance on coordinates: computed points nearer to each other than this share of the artwork's
 * extent are one, the rounding of a handful of operations.
 */
export const COINCIDENT_REL_TOL: number = 8 * Number.EPSILON;

/**
 * Lengths, in mm, and distances that differ by less than this are ties where one of several equal parts is
 * chosen or put first (1 nm, as fine as crossings are computed): rounding must not choose, for it differs from one
 * JavaScript engine to another.
 */
export const TIE_GRAIN_MM = 1e-6;

/** A length in whole grains of {@link TIE_GRAIN_MM}: equal for ties, so that whatever comes next decides. */
export function inGrains(mm: number): number {
  return Math.round(mm / TIE_GRAIN_MM);
}

/** Compares by a number, the smallest first, where ties keep the order that they have. */
export function byGrain<T>(key: (item: T) => number): (a: T, b: T) => number {
  return (a, b) => inGrains(key(a)) - inGrains(key(b));
}
