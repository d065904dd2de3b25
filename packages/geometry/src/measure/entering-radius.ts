import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { BLOCK } from './axis-blocks.ts';
import { MAX_CLEARANCE, MIN_CLEARANCE, SUM_STRIDE } from './cell-sums.ts';

/**
 * Relative tolerance on a clearance: within this share of a cutter's radius it ties with that radius.
 * Clearances along a stroke drawn as wide as the cutter differ by rounding, about 1e-15 of the artwork's
 * size: without a tie the cutter would enter here and not there, and the same stroke rotated would be cut
 * differently. Ten times more would show in areas, which are promised to 1e-9.
 */
export const TIE_REL_TOL = 1e-9;

/** Clearances that fall along an edge by more than this share of them are no rounding (our choice: the falls seen were of 1e-7). */
const FALL_REL_TOL = 1e-6;

/**
 * The radius that decides where a cutter enters, mm: its own, or twice `TIE_REL_TOL` less where some
 * clearance ties with it, so that a stroke as wide as the cutter is cut along its whole length. Where walls are nearly level, places of nodes
 * and with them clearances may be rounded by more, so that one falls along an edge that should rise: the radius is never within such a fall, past which
 * the cutter would neither enter nor stop. Linear time, and again as long as
 * falls lie below others.
 */
export function enteringRadius(axis: MedialAxis, radiusMm: number): number {
  let radius = isTied(axis, radiusMm) ? radiusMm * (1 - 2 * TIE_REL_TOL) : radiusMm;
  for (let low = belowFalls(axis, radius); low < radius; low = belowFalls(axis, radius)) {
    radius = low;
  }
  return radius;
}

/** The least clearance to which one falls along an edge from the given one or more, or that itself. */
function belowFalls({ blocks, edgeFrom, edgeTo, nodeR }: MedialAxis, clearanceMm: number): number {
  const most = clearanceMm * FALL_REL_TOL;
  let least = clearanceMm;
  for (let at = 0, first = 0; at < blocks.length; at += SUM_STRIDE, first += BLOCK) {
    if (blocks[at + MIN_CLEARANCE] >= clearanceMm + most || blocks[at + MAX_CLEARANCE] < clearanceMm - most) {
      continue;
    }
    const end = Math.min(first + BLOCK, edgeFrom.length);
    for (let e = first; e < end; e++) {
      const to = nodeR[edgeTo[e]];
      if (to < least && to >= clearanceMm - most && nodeR[edgeFrom[e]] >= least) {
        least = to;
      }
    }
  }
  return least;
}

/** Whether some clearance ties with the given one. Linear time, most of which blocks save. */
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
