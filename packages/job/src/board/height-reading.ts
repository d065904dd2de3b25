import type { Point } from '@pourproof/plane';

/** A reading of the board's height (or thickness on a flat bed) at a place, both in mm. */
export interface HeightReading {
  readonly atMm: Point;
  readonly heightMm: number;
}
