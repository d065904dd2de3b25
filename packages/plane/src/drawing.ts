import type { Notice } from './notice.ts';
import type { Point } from './point.ts';
import type { Region } from './region.ts';
import type { TextInUnits } from './text-in-units.ts';

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
  /** Points that join lines and curves in the file or font; of a stroked line those of the line. Absent where a reader does not count them. */
  readonly nodes?: number;
}

/** A gap between two ends of an outline. */
export interface OutlineGap {
  readonly fromMm: Point;
  readonly toMm: Point;
  readonly widthMm: number;
}

/** An outline that the file leaves open, with what it bounds once straight lines close its gaps. */
export interface OpenOutline {
  /** The widest first. */
  readonly gaps: readonly OutlineGap[];
  readonly areaMm2: number;
  /** `filled`: it is in the artwork as if straight lines closed it; `left-out`: it bounds nothing there. */
  readonly reading: 'filled' | 'left-out';
  /** Whether closing it leaves wood standing instead of cutting more: it lies in what is filled. */
  readonly isHole: boolean;
}

/** A joining tolerance that was tried on a drawing. */
export interface TriedJoin {
  /** Least tolerance that closes as many outlines as any does, mm, in whole hundredths. */
  readonly toleranceMm: number;
  /** How many of the open outlines it closes, and the area that they bound. */
  readonly closes: number;
  readonly areaMm2: number;
}

/** The outlines that a drawing leaves open. */
export interface OpenOutlines {
  readonly outlines: readonly OpenOutline[];
  /** `null` where none closes any, or each that does would join lines that are no outline. */
  readonly join: TriedJoin | null;
}

/**
 * What a reader makes of a file or a text: shapes in painter's order, and notices. A proof knows nothing else
 * of the artwork, wherever it came from.
 */
export interface Drawing {
  readonly format: 'svg' | 'dxf' | 'lettering';
  /** How file units became mm, in words: `width="120mm" over viewBox 0 0 240 80`. */
  readonly scaleSource: TextInUnits;
  readonly shapes: readonly DrawnShape[];
  readonly notices: readonly Notice[];
  /** Largest deviation between a true curve and its polyline, in mm. */
  readonly toleranceMm: number;
  /** Outlines that the file leaves open; absent where there is none. */
  readonly open?: OpenOutlines;
  /** The page, if the file has one, in mm from the origin. */
  readonly pageMm?: { readonly widthMm: number; readonly heightMm: number };
}
