import type { Job, JobInput } from '@pourproof/job';
import { reorderedRounds } from '@pourproof/proof';
import type { Candidate } from './candidate.ts';

/** All orders are tried of so many rounds; of more each two neighbours the other way round (our choice). */
const MAX_PERMUTED = 3;

/** The rounds of a job in other orders. */
export function otherOrders(job: JobInput, settled: Job): readonly Candidate[] {
  const places = settled.rounds.map((_, k) => k);
  const orders = places.length > MAX_PERMUTED ? swapped(places) : permuted(places).slice(1);
  return orders.map((order) => ({
    part: 'rounds',
    guess: 1,
    most: 1,
    at: () => ({ ...job, ...reorderedRounds(settled, order) }),
  }));
}

/** All orders of a list, its own first. */
function permuted(list: readonly number[]): readonly (readonly number[])[] {
  return list.length < 2
    ? [list]
    : list.flatMap((first) =>
        permuted(list.filter((other) => other !== first)).map((rest) => [first, ...rest]),
      );
}

function swapped(list: readonly number[]): readonly (readonly number[])[] {
  return list
    .slice(1)
    .map((later, k) => [...list.slice(0, k), later, ...list.slice(k, k + 1), ...list.slice(k + 2)]);
}
