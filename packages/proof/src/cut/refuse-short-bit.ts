import type { Job } from '@pourproof/job';
import { bitSize, bitText, JobError } from '@pourproof/job';
import { shortBit } from './short-bit.ts';

/**
 * Refuses a job in which a bit is too short for the depth and no later bit makes up for it.
 *
 * @throws {JobError} naming the bit, its length and what to do
 */
export function refuseShortBit({ bits, depthMm, units }: Job): void {
  const short = shortBit(bits, depthMm);
  if (short === undefined) {
    return;
  }
  throw new JobError('bit-too-short', 'depth', {
    depth: bitSize(depthMm, units),
    bit: bitText(short, units),
    length: bitSize(short.cuttingLengthMm ?? 0, units),
  });
}
