/** A piece of an axis edge that is either stroke or taper, between two shares from the low end. */
export interface StrokePiece {
  readonly edge: number;
  readonly isStroke: boolean;
  readonly from: number;
  readonly to: number;
  /**
   * Whether it is cut off from the rest of the edge: below by the taper before a stroke, above by the stroke after a taper
   * or by a limit of the width.
   */
  readonly isCutBelow: boolean;
  readonly isCutAbove: boolean;
}
