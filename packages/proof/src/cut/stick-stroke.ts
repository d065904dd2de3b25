import type { Job } from '@pourproof/job';
import { passWidthMm } from './pass-width.ts';

/**
 * Width in mm of single-line letters for a job: as wide as its smallest bit cuts in one pass.
 *
 * Flattened strokes vary in width by the tolerance on either side; the bit must still fit where they are
 * narrowest.
 */
export function stickStrokeMm(job: Pick<Job, 'bits' | 'depthMm' | 'toleranceMm'>): number {
  return passWidthMm(job) + 2 * job.toleranceMm;
}
