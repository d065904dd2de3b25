import { checks } from '../checks/checks.ts';
import { proposed } from '../checks/proposed.ts';
import { runChecks } from '../checks/run-checks.ts';
import { typedColour } from '../colours/drawn-colours.ts';
import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { MeasuredRound } from './measured-rounds.ts';

/** Decimals of lengths that ways out are told in. */
const STEPS_PER_MM = 100;

/**
 * The findings of all rounds in the order of the checks, each with its round. What every round finds alike, as of the resin or the shop, is one
 * finding of the whole job.
 *
 * @param named how many rounds the job names: the depth of others is that of the job
 */
export function findingsOfRounds(rounds: readonly MeasuredRound[], named: number): readonly Finding[] {
  const byRound = rounds.map(({ measured }) => runChecks(measured));
  return checks.flatMap(({ code }) => {
    const found = byRound.map((findings) => findings.find((finding) => finding.code === code));
    const [first] = found;
    if (first !== undefined && found.every((other) => other !== undefined && isSame(other, first))) {
      return [first];
    }
    return found.flatMap((finding, k) =>
      finding === undefined ? [] : [{ ...ofRound(finding, k, rounds, named), round: k + 1 }],
    );
  });
}

/** Whether two rounds find the same, with the same ways out; these take time to find, and are asked for last. */
function isSame({ fix: ways, ...one }: Finding, { fix: otherWays, ...other }: Finding): boolean {
  return JSON.stringify(one) === JSON.stringify(other) && JSON.stringify(ways) === JSON.stringify(otherWays);
}

/** A finding of a round with its ways out as the job has them. */
export function ofRound(
  finding: Finding,
  k: number,
  rounds: readonly MeasuredRound[],
  named: number,
): Finding {
  return {
    ...finding,
    fix: proposed(() => finding.fix.options.map((fix) => fixOfRound(fix, k, rounds, named))),
  };
}

/** A way out as the job has it: each levelling takes its share, a named round has a depth of its own and may have bits of its own, and a round is parted among the others. */
function fixOfRound(fix: Fix, k: number, rounds: readonly MeasuredRound[], named: number): Fix {
  switch (fix.do) {
    case 'level-less':
      return {
        ...fix,
        byMm: Math.ceil((fix.byMm / (rounds.length - k)) * STEPS_PER_MM) / STEPS_PER_MM,
      };
    case 'deepen':
    case 'cut-shallower':
      return k < named ? { ...fix, round: k + 1 } : fix;
    case 'use-bit':
    case 'use-vee':
    case 'use-tip':
      return rounds[k]?.hasOwnBits === true ? { ...fix, round: k + 1 } : fix;
    case 'pour-in-rounds':
      return {
        ...fix,
        rounds: [...namesOf(rounds.slice(0, k)), ...fix.rounds, ...namesOf(rounds.slice(k + 1))],
      };
    default:
      return fix;
  }
}

function namesOf(rounds: readonly MeasuredRound[]): string[][] {
  return rounds.map(({ colours, measured }) => {
    const all = (measured.site.colours ?? measured.colours).all.map(({ name }) => name);
    return colours.map(({ name }) => typedColour(name, all));
  });
}
