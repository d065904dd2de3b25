import { type BitInput, type Job, type JobInput, typedJob } from '@pourproof/job';

type Round = Job['rounds'][number];
/** A round as a job gives it. */
export type RoundInput = Exclude<NonNullable<JobInput['rounds']>, string>[number];

/** The rounds of a job with one of them changed; `null` where the job does not name it. */
export function changedRound(
  rounds: readonly Round[],
  round: number,
  change: (given: RoundInput, settled: Round) => RoundInput,
): JobInput | null {
  return rounds[round - 1] === undefined
    ? null
    : {
        rounds: typedRounds(
          rounds.map((each, k) => (k === round - 1 ? change(givenRound(each), each) : givenRound(each))),
        ),
      };
}

function givenRound({ drawn, depthMm, bits }: Round): RoundInput {
  return {
    colours: drawn,
    ...(depthMm === null ? {} : { depth: { mm: depthMm } }),
    ...(bits === null ? {} : { bit: bits.map(plainBit) }),
  };
}

/** A bit without what nobody has said of it. */
export function plainBit(bit: BitInput): BitInput {
  return typeof bit === 'string' || (bit.cuttingLengthMm ?? null) !== null
    ? bit
    : { ...bit, cuttingLengthMm: undefined };
}

/** A round of some colours, with the depth and the bits of the round that the job has the first of them in. */
export function partedRound(colours: readonly string[], { rounds }: Job): RoundInput {
  const first = colours[0]?.toLowerCase();
  const now = rounds.find(({ drawn }) => drawn.some((name) => name.toLowerCase() === first));
  return now === undefined ? { colours } : { ...givenRound(now), colours };
}

/** The rounds of a job in another order: the places, from 0, that they have in its own. */
export function reorderedRounds({ rounds }: Job, order: readonly number[]): JobInput {
  return { rounds: typedRounds(order.flatMap((k) => rounds[k] ?? []).map(givenRound)) };
}

/** Rounds as text, where no name has signs of it; else as they are. */
export function typedRounds(rounds: readonly RoundInput[]): JobInput['rounds'] {
  const isPlain = rounds.every(({ colours }) => colours.every((name) => !/[,+:]/u.test(name)));
  return isPlain ? typedJob({ rounds }).rounds : rounds;
}

/** The rounds of a job with another depth of one of them; `null` where the job does not name it. */
export function deeperRound(
  { rounds, depthMm }: Job,
  round: number,
  depth: (nowMm: number) => string,
): JobInput | null {
  return changedRound(rounds, round, (each, { depthMm: ownMm }) => ({
    ...each,
    depth: depth(ownMm ?? depthMm),
  }));
}
