import { widestMm } from './bit.ts';
import type { Job } from './job.ts';

/**
 * Width in mm of single-line letters for a job: as wide as its smallest bit.
 *
 * Flattened strokes weave by the tolerance on either side; the bit must still fit where they are narrowest.
 */
export function stickStrokeMm({ bits, toleranceMm }: Pick<Job, 'bits' | 'toleranceMm'>): number {
  return Math.min(...bits.map(widestMm)) + 2 * toleranceMm;
}
