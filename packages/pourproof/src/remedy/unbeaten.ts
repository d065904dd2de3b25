import type { Remedy } from './remedies.ts';

/** Costs that differ by less are the same: rounding. */
const SAME_REL_TOL = 1e-6;

/** Those that no other beats in all costs, the one that changes the look least first. */
export function unbeaten(remedies: readonly Remedy[]): readonly Remedy[] {
  return remedies
    .filter((one, k) => !remedies.some((other, n) => n !== k && beats(other, one, n < k)))
    .toSorted(
      (a, b) =>
        a.look.areaMm2 - b.look.areaMm2 ||
        a.changes.length - b.changes.length ||
        a.costs.hours - b.costs.hours ||
        a.costs.minutes - b.costs.minutes,
    );
}

/** Whether one is nowhere dearer than another, and cheaper somewhere, or the same and before it. */
function beats(one: Remedy, other: Remedy, isBefore: boolean): boolean {
  const pairs = costList(one).map((cost, k) => [cost, costList(other)[k] ?? 0] as const);
  const isSame = ([a, b]: readonly [number, number]): boolean =>
    Math.abs(a - b) <= SAME_REL_TOL * Math.max(Math.abs(a), Math.abs(b));
  const isDearer = pairs.some((pair) => !isSame(pair) && pair[0] > pair[1]);
  return !isDearer && (isBefore || pairs.some((pair) => !isSame(pair)));
}

function costList({ costs, look, remaining, changes }: Remedy): readonly number[] {
  const { minutes, massG, price, hours } = costs;
  return [minutes, massG, price ?? 0, hours, look.areaMm2, look.shiftMm, remaining.length, changes.length];
}
