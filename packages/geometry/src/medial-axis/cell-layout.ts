/**
 * What is kept for each instance of a site: one record, so that what one step reads lies in one place, because the collapse of a large boundary jumps
 * about in memory. Instances are named by where their record begins. Numbers come first.
 */
export const CELL_STRIDE = 14;
/** The disc in which the cell closes; clearance infinity where it does not. */
export const X = 0;
export const Y = 1;
export const R = 2;
/** The clearance by which closings are ordered; not a number once the cell has closed. */
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

/** Then, in a view of the same memory at twice the place, what are whole numbers: the neighbours in the piece. */
export const NEXT = 22;
export const PREVIOUS = 23;
/** The half-edge that leads away from where the bisector with the next instance starts. */
export const AWAY = 24;
/** The site: index of an edge, or number of edges plus that of a point. */
export const SITE = 25;
/** The site of the point at an edge's end; the edge that ends at a point. */
export const MATE = 26;
/** 1 where the instance waits in the queue. */
export const IS_QUEUED = 27;

/** The records of some instances, twice: as numbers and as whole numbers. */
export interface Cells {
  readonly numbers: Float64Array;
  readonly links: Int32Array;
}

/** Records for a number of instances, all zero. */
export function cellsFor(count: number): Cells {
  const numbers = new Float64Array(CELL_STRIDE * count);
  return { numbers, links: new Int32Array(numbers.buffer) };
}
