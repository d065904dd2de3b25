/**
 * Points closer than this share of the artwork's extent are one point: the rounding of a handful of operations.
 */
export const COINCIDENT_REL_TOL: number = 8 * Number.EPSILON;
