import { radiusAt } from '@pourproof/cutting';
import type { Bit } from '@pourproof/job';
import { cutterOf } from './cutter-of.ts';

/**
 * The first clearing bit with a cutting length below a depth for which no later bit makes up. A later one
 * does if it reaches the depth and is no wider at the face: then it takes, further down, all that the short
 * one took. `undefined` if there is none.
 */
export function shortBit(bits: readonly Bit[], depthMm: number): Bit | undefined {
  const clearing = bits.filter(({ kind }) => kind !== 'vee');
  return clearing.find(
    (bit, k) =>
      isShort(bit, depthMm) &&
      !clearing
        .slice(k + 1)
        .some((after) => !isShort(after, depthMm) && widthMm(after, depthMm) <= widthMm(bit, depthMm)),
  );
}

/**
 * Greatest depth at which no bit of a job is too short, see {@link shortBit}, mm; infinite if no bit has a
 * length.
 */
export function deepestReachMm(bits: readonly Bit[]): number {
  const lengths = bits.map(({ cuttingLengthMm }) => cuttingLengthMm ?? Number.POSITIVE_INFINITY);
  return lengths.filter((mm) => shortBit(bits, mm) === undefined).reduce((most, mm) => Math.max(most, mm), 0);
}

function isShort({ cuttingLengthMm }: Bit, depthMm: number): boolean {
  return cuttingLengthMm !== null && cuttingLengthMm < depthMm;
}

function widthMm(bit: Bit, depthMm: number): number {
  const cutter = cutterOf(bit);
  return 2 * radiusAt(cutter, Math.min(depthMm, cutter.cuttingLengthMm));
}
