import type { Job } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { Finding, Severity } from '../report/finding-schema.ts';
import type { Fix, FixStep } from '../report/fix-schema.ts';
import { FIX_SETTINGS } from './apply-fix.ts';
import { type Comparison, compareFindings } from './compare-findings.ts';
import { FIX_WORK } from './fix-work.ts';
import { pinnedCoupons } from './pinned-coupons.ts';
import type { Proved } from './prove.ts';
import { type Redrawing, type TrialResult, type Trials, trialsOf } from './trials.ts';

/** The gravest first, as far as the number of proofs is limited. */
const ORDER: readonly Severity[] = ['stop', 'caution', 'note'];
/** Ways out beside the first that one may take (our choice). */
const MAX_ALSO = 2;

/**
 * The findings of a proof with those ways out alone that hold: each is made, and the changed job proved in full. It stays where the
 * finding is gone, or clearly milder, and nothing as grave is new; where something is, it is completed with what clears that too, or
 * is offered with what it brings if there is no better one. What is work at the bench, or takes a maker's eye, stays as it was proposed.
 */
export function* triedFindings(proved: Proved): Redrawing<readonly Finding[]> {
  const trials = trialsOf(proved);
  const tried = new Map<Finding, Finding>();
  for (const severity of ORDER) {
    for (const finding of proved.findings) {
      if (finding.severity === severity) {
        tried.set(finding, yield* triedFinding(finding, proved, trials));
      }
    }
  }
  return proved.findings.map((finding) => tried.get(finding) ?? finding);
}

/** A way out after its trial: how much it costs to take it, from 0, or why it is not offered. */
type Tried =
  | { readonly fix: Fix; readonly rank: 0 | 1 | 2 | 3 }
  | { readonly fix: Fix; readonly rank: null; readonly brings: Comparison['brought'] };

function* triedFinding(finding: Finding, proved: Proved, trials: Trials): Redrawing<Finding> {
  const alone: TriedAlone[] = [];
  for (const proposed of finding.fix.options) {
    const fix = withEdge(proposed, proved);
    const found = yield* triedAlone(fix, finding, proved, trials);
    alone.push(...found);
  }
  const enough = alone.filter(({ tried }) => clearsAll(tried)).map(({ tried: { fix } }) => fix);
  const all: Tried[] = [];
  for (const { tried, result } of alone) {
    const longer =
      result === null || clearsAll(tried) || (isGood(tried) && !hasFewer(finding, result))
        ? null
        : yield* completed(untried(tried.fix), result, { finding, enough }, proved, trials);
    all.push(longer ?? tried);
  }
  const offered = all.filter((each) => each.rank !== null);
  const isEasy = offered.some(({ rank }) => rank !== null && rank < 3);
  const options = offered
    .filter(({ rank }) => !isEasy || rank !== 3)
    .toSorted((a, b) => (a.rank ?? 0) - (b.rank ?? 0))
    .map(({ fix }) => fix)
    .filter(isFirst);
  const dropped = all.flatMap((each) =>
    each.rank === null ? [{ fix: each.fix, brings: [...each.brings] }] : [],
  );
  return { ...finding, fix: { options, ...(dropped.length > 0 ? { dropped } : {}) } };
}

/** Bits this much deeper than wide are not what is usually at hand: their edge has to be asked for. */
function withEdge(fix: Fix, { job }: Proved): Fix {
  return fix.do === 'use-bit' && job.depthMm > limits.usualEdgeToBit.value * fix.diameterMm
    ? { ...fix, edgeMm: Math.ceil(job.depthMm * 100) / 100 }
    : fix;
}

/** A way out after its own trial, and that trial where another change may complete it. */
interface TriedAlone {
  readonly tried: Tried;
  readonly result: TrialResult | null;
}

function* triedAlone(
  fix: Fix,
  finding: Finding,
  proved: Proved,
  trials: Trials,
): Redrawing<readonly TriedAlone[]> {
  const asProposed: TriedAlone = { tried: { fix, rank: 0 }, result: null };
  const work = FIX_WORK[fix.do];
  if (work === 'bench' || work === 'look' || (work === 'setting' && FIX_SETTINGS[fix.do].length === 0)) {
    return [asProposed];
  }
  if (work === 'drawing') {
    const result = trials.drawn(fix, finding);
    if (result === null) {
      return [asProposed];
    }
    return result.is === 'untried' ? [] : [{ tried: judged(fix, result, finding, proved), result: null }];
  }
  const result = yield* trials.tried([fix]);
  if (result.is === 'untried' && fix.do === 'join-ends') {
    // where nobody reads the artwork anew, its reader's own trial holds
    return [asProposed];
  }
  return result.is === 'same' || result.is === 'untried'
    ? []
    : [{ tried: judged(fix, result, finding, proved), result }];
}

function clearsAll({ rank }: Tried): boolean {
  return rank === 0 || rank === 1;
}

function isGood({ rank }: Tried): boolean {
  return rank !== null && rank < 3;
}

/** Whether a way out clears some of the places of a finding and leaves others. */
function hasFewer(finding: Finding, result: TrialResult): boolean {
  const left = result.is === 'proved' ? compareFindings(finding, result).left : undefined;
  return left !== undefined && left.where.length < finding.where.length;
}

/** What a trial says of a way out. */
function judged(fix: Fix, result: TrialResult, finding: Finding, proved: Proved): Tried {
  if (result.is !== 'proved') {
    return { fix, rank: null, brings: [] };
  }
  const { left, isBetter, asGrave, graver, brought } = compareFindings(finding, result);
  // a turn opens other walls instead, fewer of them: that is what it is for
  const spares = fix.do === 'turn' && left?.severity === finding.severity;
  const { changed } = pinnedCoupons(proved.job.input.coupons ?? [], proved.job, [fix, ...(fix.also ?? [])]);
  const isElsewhere = asGrave.some(({ code }) => !spares || code !== finding.code);
  if ((!isBetter && !spares) || graver.length > 0) {
    return { fix, rank: null, brings: brought };
  }
  return {
    fix: {
      ...fix,
      clears: left === undefined,
      ...(left === undefined ? {} : { leaves: { severity: left.severity, value: left.measured.value } }),
      ...(brought.length > 0 ? { brings: [...brought] } : {}),
      ...(changed.length > 0 ? { couponRows: [...changed] } : {}),
    },
    rank: isElsewhere ? 3 : left === undefined ? costOf(fix) : 2,
  };
}

/** Ways out that take others with them come after those that do not. */
function costOf({ also = [] }: Fix): 0 | 1 {
  return also.length > 0 ? 1 : 0;
}

/** What is to be cleared, and the ways out that do so by themselves. */
interface Task {
  readonly finding: Finding;
  readonly enough: readonly Fix[];
}

/** A way out with others that clear what it brings or leaves, or that make it possible; `null` where none do. */
function* completed(
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

/** A way out and what else it takes, one after the other. */
function stepsOf(fix: Fix): readonly FixStep[] {
  return [untried(fix), ...(fix.also ?? [])];
}

/** A way out without what trials of it said and added. */
function untried({ leaves: _, brings: __, couponRows: ___, also: ____, ...fix }: Fix): Fix {
  return fix;
}

/** What a step does, whatever its trial says. */
function doneBy({ clears: _, ...step }: FixStep): string {
  return JSON.stringify(step);
}

/** The same steps in another order are the same way out. */
function isFirst(fix: Fix, index: number, all: readonly Fix[]): boolean {
  const done = (each: Fix): string => stepsOf(each).map(doneBy).toSorted().join();
  return all.findIndex((each) => done(each) === done(fix)) === index;
}

/** Two ways out as one: the first made larger by another of its kind, or with the second after it; none where they undo each other. */
function joined(fix: Fix, step: FixStep): readonly Fix[] {
  const larger = sumOf(fix, step);
  if (larger !== null) {
    return [{ ...fix, ...larger }];
  }
  const sums = (fix.also ?? []).map((each) => sumOf(each, step));
  if (sums.some((sum) => sum !== null)) {
    return [{ ...fix, also: (fix.also ?? []).map((each, k) => sums[k] ?? each) }];
  }
  const [before = [], seal] = [fix.also, step.do === 'change-seal' ? step : undefined];
  if (seal !== undefined && before.some((each) => each.do === 'change-seal')) {
    // a better seal instead of the first
    return [{ ...fix, also: before.map((each) => (each.do === 'change-seal' ? seal : each)) }];
  }
  const also = [...before, step];
  const taken = new Set([fix, ...(fix.also ?? [])].flatMap((each) => FIX_SETTINGS[each.do]));
  return FIX_SETTINGS[step.do].some((key) => taken.has(key)) ? [] : [{ ...fix, also }];
}

/** What two changes of one kind make together; `null` for kinds that do not add up. */
function sumOf(fix: FixStep, step: FixStep): FixStep | null {
  switch (step.do) {
    case 'move':
      return fix.do === 'move'
        ? {
            ...step,
            rightMm: hundredths(fix.rightMm + step.rightMm),
            downMm: hundredths(fix.downMm + step.downMm),
          }
        : null;
    case 'deepen':
      return fix.do === 'deepen' && fix.round === step.round
        ? { ...step, byMm: hundredths(fix.byMm + step.byMm) }
        : null;
    case 'level-less':
      return fix.do === 'level-less' ? { ...step, byMm: hundredths(fix.byMm + step.byMm) } : null;
    case 'track':
      return fix.do === 'track' ? { ...step, byMm: hundredths(fix.byMm + step.byMm) } : null;
    case 'space-lines':
      return fix.do === 'space-lines' ? { ...step, factor: hundredths(fix.factor * step.factor) } : null;
    case 'scale':
      return fix.do === 'scale' ? { ...step, factor: hundredths(fix.factor * step.factor) } : null;
    default:
      return null;
  }
}

/** Rounding of sums that is no step more, in hundredths. */
const ROUNDING = 1e-6;

/** Rounded away from 0 to a hundredth, as it is printed. */
function hundredths(value: number): number {
  return (Math.sign(value) * Math.ceil(Math.abs(value) * 100 - ROUNDING)) / 100;
}

/** A board that leaves enough wood below a deeper cut. */
function thickerBoards(fix: Fix, job: Job): readonly FixStep[] {
  if (fix.do !== 'deepen') {
    return [];
  }
  const depthMm = job.depthMm + fix.byMm;
  const least = Math.max(depthMm + limits.floorUnderPocket.value, depthMm / (1 - limits.floorToBoard.value));
  return [{ do: 'thicker-board', thicknessMm: Math.ceil(least * 100) / 100, clears: true }];
}
