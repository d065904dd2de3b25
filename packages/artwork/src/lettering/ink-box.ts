/** The smallest box around an outline, in ems, y up as in fonts. */
export interface InkBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}
