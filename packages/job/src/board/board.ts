import type { Point } from '@pourproof/plane';

/**
 * One piece of wood in a glue-up. Angles in degrees, lengths in mm, in the frame of the board: x right, y
 * down, corner at 0,0.
 */
export interface Block {
  /** Id of its wood in the job's materials. */
  readonly wood: string;
  /** Heart or sap, as the maker says; shown, without a number of its own. */
  readonly part: 'heart' | 'sap' | null;
  /** Fibre direction on the face, counter-clockwise from the board's x axis. */
  readonly grainDeg: number;
  /** Fibre direction out of the face; 90 is end grain up. */
  readonly diveDeg: number;
  /** Corners, in order round the block. */
  readonly outline: readonly Point[];
}

/** A glued-up board. */
export interface Board {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm: number;
  readonly blocks: readonly Block[];
}
