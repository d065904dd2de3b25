import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { isTied, TIE_REL_TOL } from './entering-radius.ts';

/**
 * The clearance at which the depth limit stops a cutter that follows, mm: as given, or twice
 * `TIE_REL_TOL` more where some clearance ties with it, so that a stroke whose middle is exactly as
 * deep as the limit is followed along its middle. Linear time.
 */
export function stoppingClearance(axis: MedialAxis, clearanceMm: number): number {
  return isTied(axis, clearanceMm) ? clearanceMm * (1 + 2 * TIE_REL_TOL) : clearanceMm;
}
