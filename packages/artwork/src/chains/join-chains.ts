import type { OutlineGap, Point } from '@pourproof/plane';
import { chainGraph, type Doubled, SNAP_MM } from './chain-graph.ts';
import { mergeOverlaps } from './merge-overlaps.ts';
import { traceRings } from './trace-rings.ts';

/** A line with two ends, as a polyline in mm. */
export interface ChainPiece {
  readonly coords: readonly number[];
}

/** Lines that do not close. */
export interface OpenChain {
  /** One loose end. */
  readonly atMm: Point;
  /** Where the chain ends on the other side: a loose end too, or a point where lines branch. */
  readonly otherMm: Point;
  /** Distance between the two loose ends; 0 when the other side is not loose. */
  readonly gapMm: number;
  /** The way from one end to the other. */
  readonly coords: readonly number[];
  /** Which of the pieces has the loose end. */
  readonly piece: number;
}

/** What joining made of a set of lines. */
export interface JoinedChains {
  /** Closed outlines, not repeating the first point, with the piece that each begins with. */
  readonly rings: readonly {
    readonly coords: number[];
    readonly piece: number;
    /** Gaps that were closed along it. */
    readonly gaps: readonly OutlineGap[];
  }[];
  readonly open: readonly OpenChain[];
  /** Gaps that were closed, the smallest first. */
  readonly gaps: readonly OutlineGap[];
  /** Pieces that lie on others and count once. */
  readonly doubled: readonly Doubled[];
  /**
   * Points where outlines branch so that no reading by even-odd exists; there every closed cell was filled.
   */
  readonly branches: readonly Point[];
}

/**
 * Joins lines at their ends into closed outlines.
 *
 * Ends within 1 µm are one point. Loose ends within `joinToleranceMm` of another loose end are then paired,
 * the smallest gap first. Lines that lie on each other count once. Lines that lead nowhere are open chains
 * and are returned as such. Where more than two lines meet, an even number of them at every point gives
 * outlines that touch there (even-odd makes all ways of telling them apart equal); an odd number somewhere
 * has no such reading, and every cell between the lines becomes an outline.
 *
 * Cost: O(n log n) for n pieces.
 */
export function joinChains(pieces: readonly ChainPiece[], joinToleranceMm: number): JoinedChains {
  const merged = mergeOverlaps(pieces.map(({ coords }) => coords));
  const graph = chainGraph(merged.lines, merged.pieceOf, Math.max(joinToleranceMm, SNAP_MM));
  const traced = traceRings(graph);
  return {
    rings: traced.rings,
    open: traced.open,
    gaps: graph.gaps,
    doubled: [...merged.doubled, ...graph.doubled],
    branches: traced.branches,
  };
}
