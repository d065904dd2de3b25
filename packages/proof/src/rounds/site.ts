import type { Bounds, CleanRegion } from '@pourproof/plane';
import type { DrawnColours } from '../colours/drawn-colours.ts';
import type { FilledPocket } from './filled-pockets.ts';

/** What a round finds when it begins; a job of one round begins on a bare board. */
export interface Site {
  /** Box of the whole artwork, which lies on the board as one; `null` where that is the drawing measured. */
  readonly boundsMm: Bounds | null;
  /** Colours of the whole drawing; `null` where that is the drawing measured. */
  readonly colours: DrawnColours | null;
  /** The whole artwork; `null` where that is the drawing measured. */
  readonly artwork: CleanRegion | null;
  /** How much earlier levellings have taken off the face, mm. */
  readonly loweredMm: number;
  /** How often the face is levelled from this round on. */
  readonly levellings: number;
  readonly filled: readonly FilledPocket[];
}

/** A board that nothing was done to. */
export const BARE_SITE: Site = {
  boundsMm: null,
  colours: null,
  artwork: null,
  loweredMm: 0,
  levellings: 1,
  filled: [],
};
