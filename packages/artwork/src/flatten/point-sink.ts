/** A growing list of ring coordinates `[x0,y0,x1,y1,…]` in mm. */
export type CoordSink = number[];

/** Takes the points of a ring one by one, in mm: a list, or a store of rings. */
export interface PointSink {
  push(x: number, y: number): unknown;
}
