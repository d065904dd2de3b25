/** A point or vector in millimetres, x right, y down. */
export type Point = readonly [x: number, y: number];
