/**
 * The record of one instance of a site. What one step reads lies in one place, because the collapse of a
 * large boundary jumps about in memory. An instance is named by the place where its record begins.
 * Floating-point numbers come first.
 */
export const CELL_STRIDE = 14;
/** The disc in which the cell closes; clearance infinity where it does not. */
export const X = 0;
export const Y = 1;
export const R = 2;
/** The clearance by which closings are ordered; NaN once the cell has closed. */
export const DUE = 3;
/** The disc from which the bisector with the next instance grows. */
export const GROWS_X = 4;
export const GROWS_Y = 5;
export const GROWS_R = 6;
/** The site: start and unit direction of an edge, or a point. */
export const SITE_X = 7;
export const SITE_Y = 8;
export const SITE_TX = 9;
export const SITE_TY = 10;

/** Then integers, in a view of the same memory at twice the place: the neighbours in the piece. */
export const NEXT = 22;
export const PREVIOUS = 23;
/** The half-edge that leads away from the start of the bisector with the next instance. */
export const AWAY = 24;
/** The site: index of an edge, or the number of edges plus the index of a vertex. */
export const SITE = 25;
/** Of an edge the site of its end vertex; of a vertex the edge that ends there. */
export const MATE = 26;
/** 1 while the instance is queued. */
export const IS_QUEUED = 27;

/** Records of instances, in two views of one memory: as floating-point numbers and as integers. */
export interface Cells {
  readonly numbers: Float64Array;
  readonly links: Int32Array;
}

/** Zeroed records for a number of instances. */
export function cellsFor(count: number): Cells {
  const numbers = new Float64Array(CELL_STRIDE * count);
  return { numbers, links: new Int32Array(numbers.buffer) };
}
