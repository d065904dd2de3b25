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
  const length = bitSize(short.cuttingLengthMm ?? 0, units);
  throw new JobError(
    `depth is ${bitSize(depthMm, units)}, but the cutting edge of the ${bitText(short, units)} is only ${length} long. Cut no deeper, or give a longer bit that is no wider after it: it goes on below.`,
  );
}
