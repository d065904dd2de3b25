import { type BitInput, type Job, type JobInput, usualInput, type VeeBit } from '@pourproof/job';
import { inchesFromMm, type LengthUnit } from '@pourproof/plane';
import type { FixStep } from '../report/fix-schema.ts';
import { changedRound, plainBit } from './changed-rounds.ts';
import { typedLength } from './typed-length.ts';

type BitFix = FixStep & { readonly do: 'use-bit' | 'use-vee' | 'use-tip' };

/** A job with the bits that a way out takes, of a round where it names one; `null` where they are those that it has. */
export function changedBits(job: JobInput, settled: Job, fix: BitFix): JobInput | null {
  switch (fix.do) {
    case 'use-bit':
      return withBits(job, settled, fix.round, (bits) => [...bits, flatBit(fix, settled.units)]);
    case 'use-vee':
      return changedVees(job, settled, fix.round, (vee) =>
        vee.angleDeg === fix.angleDeg && vee.diameterMm < fix.diameterMm
          ? { ...vee, diameterMm: fix.diameterMm }
          : vee,
      );
    case 'use-tip':
      return changedVees(job, settled, fix.round, (vee) =>
        vee.tipMm > fix.tipMm ? { ...vee, tipMm: fix.tipMm } : vee,
      );
  }
}

function givenBits(job: JobInput, settled: Job): readonly BitInput[] {
  return job.bit ?? (settled.fromShop.includes('bit') ? settled.bits : usualInput('bit', job)) ?? [];
}

/** Other bits, of a round where one is named; `null` where they are the same, or the round has none of its own. */
function withBits(
  job: JobInput,
  settled: Job,
  round: number | undefined,
  change: (bits: readonly BitInput[]) => readonly BitInput[],
): JobInput | null {
  if (round === undefined) {
    const given = givenBits(job, settled);
    const changed = change(given);
    return changed.length === given.length && changed.every((bit, k) => bit === given[k])
      ? null
      : { bit: changed };
  }
  const { rounds } = settled;
  const bits = rounds[round - 1]?.bits ?? null;
  return bits === null
    ? null
    : changedRound(rounds, round, (each) => ({ ...each, bit: change(bits).map(plainBit) }));
}

/** V bits changed, in their places. */
function changedVees(
  job: JobInput,
  settled: Job,
  round: number | undefined,
  change: (vee: VeeBit) => VeeBit,
): JobInput | null {
  return withBits(job, settled, round, (given) => {
    const bits = round === undefined ? settled.bits : (settled.rounds[round - 1]?.bits ?? []);
    return bits.map((bit, k) => {
      const vee = bit.kind === 'vee' ? change(bit) : bit;
      return vee === bit ? (given[k] ?? bit) : vee;
    });
  });
}

/** Digits of an inch that hold every 64th of one. */
const INCH_DIGITS = 6;

function flatBit({ diameterMm, edgeMm }: FixStep & { do: 'use-bit' }, unit: LengthUnit): string {
  const diameter =
    unit === 'in' ? `${Number(inchesFromMm(diameterMm).toFixed(INCH_DIGITS))}in` : `${diameterMm}mm`;
  return `flat:${diameter}${edgeMm === undefined ? '' : `:length ${typedLength(edgeMm, unit, 'up')}`}`;
}
