/** One piece of an outline from the end of the piece before; coordinates in mm. */
export type OutlinePiece =
  | { readonly kind: 'line'; readonly to: XY }
  /** `bulge` is the tangent of a quarter of the arc's turn, positive from +x to +y. */
  | { readonly kind: 'arc'; readonly to: XY; readonly bulge: number }
  /** A cubic Bézier with its two inner control points. */
  | { readonly kind: 'cubic'; readonly to: XY; readonly control: readonly [XY, XY] };

/** A point, mm. */
export type XY = readonly [x: number, y: number];

/** A closed outline: its pieces lead from the end of the last one around to it. */
export interface OutlinePath {
  readonly start: XY;
  readonly pieces: readonly OutlinePiece[];
  /** Upper bound on the distance from any point of it to what it was fitted to, and back, mm. */
  readonly offMm: number;
}
