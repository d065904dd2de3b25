/**
 * The fewest steps in which colours that touch are never poured together, by a greedy rule: each colour comes one round after the last of those that it
 * touches and that are painted below it.
 *
 * @param names colours in the order in which they are painted
 * @returns names by round, in the order of the work
 */
export function roundsApart(
  names: readonly string[],
  isTouching: (one: string, other: string) => boolean,
): string[][] {
  const rounds: string[][] = [];
  for (const name of names) {
    const last = rounds.findLastIndex((round) => round.some((other) => isTouching(name, other)));
    const round = rounds[last + 1];
    if (round === undefined) {
      rounds.push([name]);
    } else {
      round.push(name);
    }
  }
  return rounds;
}
