import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { BLOCK } from './axis-blocks.ts';
import { MAX_CLEARANCE, MIN_CLEARANCE, SUM_STRIDE } from './cell-sums.ts';

/**
 * A clearance within this share of a cutter's radius counts as that radius. The clearances along a stroke drawn as wide as the cutter differ by
 * rounding, about 1e-15 of the artwork's size: without this the cutter would enter here and not there, and the same stroke turned would give
 * another cut. Ten times more would show in areas, which are promised to 1e-9.
 */
export const TIE_REL_TOL = 1e-9;

/**
 * The radius with which a cutter is let into the artwork, mm: its own, or twice {@link TIE_REL_TOL} less where some clearance is as good as equal to it,
 * so that a stroke as wide as the cutter is cut, all along. Linear time.
 */
export function enteringRadius(axis: MedialAxis, radiusMm: number): number {
  return isTied(axis, radiusMm) ? radiusMm * (1 - 2 * TIE_REL_TOL) : radiusMm;
}

/** Whether some clearance counts as the given one. Linear time, most of it saved by the blocks. */
export function isTied({ blocks, edgeFrom, edgeTo, nodeR }: MedialAxis, clearanceMm: number): boolean {
  const off = clearanceMm * TIE_REL_TOL;
  for (let at = 0, first = 0; at < blocks.length; at += SUM_STRIDE, first += BLOCK) {
    if (blocks[at + MIN_CLEARANCE] > clearanceMm + off || blocks[at + MAX_CLEARANCE] < clearanceMm - off) {
      continue;
    }
    const end = Math.min(first + BLOCK, edgeFrom.length);
    for (let e = first; e < end; e++) {
      if (
        Math.abs(nodeR[edgeFrom[e]] - clearanceMm) <= off ||
        Math.abs(nodeR[edgeTo[e]] - clearanceMm) <= off
      ) {
        return true;
      }
    }
  }
  return false;
}
