import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { isTied, TIE_SHARE } from './entering-radius.ts';

/**
 * The clearance at which its depth limit stops a cutter that follows, mm: as given, or twice {@link TIE_SHARE} more where some clearance is as good as
 * equal to it, so that a stroke whose middle is just as deep as the limit is followed along its middle. Linear time.
 */
export function stoppingClearance(axis: MedialAxis, clearanceMm: number): number {
  return isTied(axis, clearanceMm) ? clearanceMm * (1 + 2 * TIE_SHARE) : clearanceMm;
}
