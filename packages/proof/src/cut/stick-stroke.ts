import type { Job } from '@pourproof/job';
import { passWidthMm } from './pass-width.ts';

/**
 * Width of the strokes of single-stroke lettering for a job, mm: what its smallest bit cuts in one go.
 *
 * Flattened strokes waver by the tolerance on either side; the bit must still fit where they are narrowest.
 */
export function stickStrokeMm(job: Pick<Job, 'bits' | 'depthMm' | 'toleranceMm'>): number {
  return passWidthMm(job) + 2 * job.toleranceMm;
}
