import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { TIE_SHARE } from './entering-radius.ts';

/**
 * The clearance at which its depth limit stops a cutter that follows, mm: as given, or twice {@link TIE_SHARE} more where some clearance is as good as
 * equal to it, so that a stroke whose middle is just as deep as the limit is followed along its middle. Linear time.
 */
export function stoppingClearance(axis: MedialAxis, clearanceMm: number): number {
  const { nodeR } = axis;
  const low = clearanceMm * (1 - TIE_SHARE);
  const high = clearanceMm * (1 + TIE_SHARE);
  for (let k = 0; k < nodeR.length; k++) {
    if (nodeR[k] >= low && nodeR[k] <= high) {
      return clearanceMm * (1 + 2 * TIE_SHARE);
    }
  }
  return clearanceMm;
}
