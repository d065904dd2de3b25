import type { Notice } from './notice.ts';
import type { Region } from './region.ts';

/** One painted shape of a drawing, in mm, its curves flattened without bias in area. */
export interface DrawnShape {
  readonly region: Region;
  /** Layer or group name; `''` when the file has none. */
  readonly layer: string;
  /** `#rrggbb` of the paint. */
  readonly colour: string;
  /** What in the file it came from, in words: `path#name, line 12`. */
  readonly source: string;
  /**
   * Set where the rings are meant to overlap, as the pieces of a stroked line or of a letter are: their
   * crossings are no fault of the drawing.
   */
  readonly isPieced?: true;
}

/**
 * What a reader makes of a file or a text: shapes in painter's order, and notices. A proof knows nothing else
 * of the artwork, wherever it came from.
 */
export interface Drawing {
  readonly format: 'svg' | 'dxf' | 'lettering';
  /** How file units became mm, in words: `width="120mm" over viewBox 0 0 240 80`. */
  readonly scaleSource: string;
  readonly shapes: readonly DrawnShape[];
  readonly notices: readonly Notice[];
  /** Largest deviation between a true curve and its polyline, in mm. */
  readonly toleranceMm: number;
  /** The page, if the file has one, in mm from the origin. */
  readonly pageMm?: { readonly widthMm: number; readonly heightMm: number };
}
