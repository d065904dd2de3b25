import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { compareFindings } from './compare-findings.ts';
import { FIX_WORK } from './fix-work.ts';
import { doneBy, joined, stepsOf, thickerBoards, untried } from './joined-ways.ts';
import { hasFewer, judged, type Tried } from './judged-way.ts';
import type { Proved } from './prove.ts';
import type { Redrawing, TrialResult, Trials } from './trials.ts';

/** Ways out beside the first that one may take (our choice). */
const MAX_ALSO = 2;

/** What is to be cleared, and the ways out that do so by themselves. */
interface Task {
  readonly finding: Finding;
  readonly enough: readonly Fix[];
}

/** A way out with others that clear what it brings or leaves, or that make it possible; `null` where none do. */
export function* completed(
  fix: Fix,
  first: TrialResult,
  task: Task,
  proved: Proved,
  trials: Trials,
): Redrawing<Tried | null> {
  let base = fix;
  let result = first;
  for (let k = 0; k < MAX_ALSO; k++) {
    let further: { readonly fix: Fix; readonly result: TrialResult } | null = null;
    for (const longer of longerWays(base, result, task, proved)) {
      const tried = yield* trials.tried(stepsOf(longer));
      if (tried.is !== 'proved') {
        continue;
      }
      const whole = judged(longer, tried, task.finding, proved);
      if (whole.rank === 0 || whole.rank === 1) {
        return whole;
      }
      further ??= { fix: longer, result: tried };
    }
    if (further === null) {
      return null;
    }
    ({ fix: base, result } = further);
  }
  return null;
}

/** A way out with one more change for what its trial has brought, or else for what it has left. */
function longerWays(
  fix: Fix,
  result: TrialResult,
  { finding, enough }: Task,
  proved: Proved,
): readonly Fix[] {
  if (result.is === 'refused') {
    return result.code === 'deeper-than-board'
      ? thickerBoards(fix, proved.job).flatMap((step) => joined(fix, step))
      : [];
  }
  if (result.is !== 'proved') {
    return [];
  }
  const { asGrave, left } = compareFindings(finding, result);
  // what each clears of a part of the places clears all of them together; by itself it is offered anyway
  const own = (hasFewer(finding, result) ? enough : finding.fix.options).map((each) => doneBy(untried(each)));
  return [...asGrave.slice(0, 1), ...(asGrave.length === 0 && left !== undefined ? [left] : [])]
    .flatMap((brought) => brought.fix.options)
    .filter((step) => FIX_WORK[step.do] === 'setting' && !own.includes(doneBy(step)))
    .flatMap((step) => joined(fix, step));
}
