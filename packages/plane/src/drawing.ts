import type { Notice } from './notice.ts';
import type { Region } from './region.ts';

/** One painted thing of a drawing, in mm, curves already flattened without bias in area. */
export interface DrawnShape {
  readonly region: Region;
  /** Layer or group name; `''` when the file has none. */
  readonly layer: string;
  /** `#rrggbb` of the paint. */
  readonly colour: string;
  /** What in the file it came from, in words: `path#name, line 12`. */
  readonly source: string;
  /**
   * Set where the region's rings are parts that are meant to overlap, such as the pieces of a stroked line or of a letter:
   * their crossings say nothing about the drawing.
   */
  readonly isPieced?: true;
}

/**
 * What a reader makes of a file or a text: painted shapes in painter's order and everything worth saying about the reading.
 * This is all that the proof knows of the artwork, wherever it came from.
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
